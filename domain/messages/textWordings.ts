/**
 * Text messages as they come with the program: who, what, when, whom to call. The subject is only for the list here. French
 * and Spanish await a native reader.
 */
import type { Wording } from './fillTemplate.ts';
import type { MessageKind, MessageLanguage } from './messageKinds.ts';

export const TEXT_WORDINGS: Readonly<Record<MessageKind, Readonly<Record<MessageLanguage, Wording>>>> = {
  'service-due': {
    en: {
      subject: 'Annual service',
      body: '{{firmName}}: the annual service of your {{appliance}} at {{site}}: due day {{dueOn}}, latest {{latestOn}}. Please call {{firmPhone}} for a day.',
    },
    fr: {
      subject: 'Entretien annuel',
      body: '{{firmName}} : l’entretien annuel de votre {{appliance}}, {{site}} : date prévue le {{dueOn}}, date limite le {{latestOn}}. Appelez le {{firmPhone}} pour convenir d’un jour.',
    },
    es: {
      subject: 'Revisión anual',
      body: '{{firmName}}: la revisión anual de su {{appliance}}, en {{site}}, corresponde el {{dueOn}}; último día, {{latestOn}}. Llame al {{firmPhone}} para acordar un día.',
    },
  },
  'first-year': {
    en: {
      subject: 'How is it doing?',
      body: '{{firmName}}: how is your {{appliance}} at {{site}} doing? If anything is unclear, call {{firmPhone}}.',
    },
    fr: {
      subject: 'Tout va bien ?',
      body: '{{firmName}} : votre {{appliance}}, {{site}}, fonctionne-t-il bien ? Une question ? Appelez le {{firmPhone}}.',
    },
    es: {
      subject: '¿Qué tal va?',
      body: '{{firmName}}: ¿qué tal va su {{appliance}}, en {{site}}? Si algo no está claro, llame al {{firmPhone}}.',
    },
  },
  appointment: {
    en: {
      subject: 'Visit booked',
      body: '{{firmName}}: we come to {{site}} on {{visitOn}}, {{visitWindow}}. If that does not suit you, call {{firmPhone}}.',
    },
    fr: {
      subject: 'Visite convenue',
      body: '{{firmName}} : nous passons le {{visitOn}}, {{visitWindow}}, {{site}}. Si cela ne vous convient pas, appelez le {{firmPhone}}.',
    },
    es: {
      subject: 'Visita acordada',
      body: '{{firmName}}: pasaremos el {{visitOn}}, {{visitWindow}}, por {{site}}. Si no le viene bien, llame al {{firmPhone}}.',
    },
  },
  'appointment-reminder': {
    en: {
      subject: 'Visit soon',
      body: '{{firmName}}: reminder of our visit to {{site}} on {{visitOn}}, {{visitWindow}}. If the day no longer suits you, call {{firmPhone}}.',
    },
    fr: {
      subject: 'Visite prochaine',
      body: '{{firmName}} : rappel de notre visite le {{visitOn}}, {{visitWindow}}, {{site}}. Si ce jour ne convient plus, appelez le {{firmPhone}}.',
    },
    es: {
      subject: 'Visita próxima',
      body: '{{firmName}}: le recordamos nuestra visita del {{visitOn}}, {{visitWindow}}, en {{site}}. Si ese día ya no le viene bien, llame al {{firmPhone}}.',
    },
  },
  'on-the-way': {
    en: {
      subject: 'On the way',
      body: '{{firmName}}: {{technician}} is on the way to {{site}}. If something has come up, call {{firmPhone}}.',
    },
    fr: {
      subject: 'En route',
      body: '{{firmName}} : {{technician}} est en route pour {{site}}. En cas d’empêchement, appelez le {{firmPhone}}.',
    },
    es: {
      subject: 'De camino',
      body: '{{firmName}}: {{technician}} va de camino a {{site}}. Si ha surgido algo, llame al {{firmPhone}}.',
    },
  },
  recall: {
    en: {
      subject: 'Safety notice',
      body: '{{firmName}}: {{noticeSource}} has issued a notice: {{noticeTitle}}. {{noticeApplies}} {{whatToDo}} {{safetyWords}} Call {{firmPhone}}.',
    },
    fr: {
      subject: 'Avis de sécurité',
      body: '{{firmName}} : {{noticeSource}} a publié un avis : {{noticeTitle}}. {{noticeApplies}} {{whatToDo}} {{safetyWords}} Appelez le {{firmPhone}}.',
    },
    es: {
      subject: 'Aviso de seguridad',
      body: '{{firmName}}: {{noticeSource}} ha publicado un aviso: {{noticeTitle}}. {{noticeApplies}} {{whatToDo}} {{safetyWords}} Llame al {{firmPhone}}.',
    },
  },
};
