/**
 * Letters and e-mails as they come with the program. French and Spanish await a native reader. A due day may have gone by
 * when the letter is written: what is said of it is true either way.
 */
import type { Wording } from './fillTemplate.ts';
import type { MessageKind, MessageLanguage } from './messageKinds.ts';

export const LETTER_WORDINGS: Readonly<Record<MessageKind, Readonly<Record<MessageLanguage, Wording>>>> = {
  'service-due': {
    en: {
      subject: 'Annual service of your {{appliance}}',
      body: 'Dear {{name}},\n\nThe due date for the annual service of your {{appliance}} (serial number {{serial}}) at {{site}} is {{dueOn}}; the latest date is {{latestOn}}.\n\nPlease call us at {{firmPhone}} to arrange a day.\n\nKind regards\n{{firmName}}',
    },
    fr: {
      subject: 'Entretien annuel de votre {{appliance}}',
      body: 'Bonjour {{name}},\n\nPour l’entretien annuel de votre {{appliance}} (numéro de série {{serial}}), {{site}}, la date prévue est le {{dueOn}} et la date limite le {{latestOn}}.\n\nAppelez-nous au {{firmPhone}} pour convenir d’un jour.\n\nCordialement\n{{firmName}}',
    },
    es: {
      subject: 'Revisión anual de su {{appliance}}',
      body: 'Hola, {{name}}:\n\nLa revisión anual de su {{appliance}} (número de serie {{serial}}), en {{site}}, corresponde el {{dueOn}}. El último día es el {{latestOn}}.\n\nLlámenos al {{firmPhone}} para acordar un día.\n\nAtentamente\n{{firmName}}',
    },
  },
  'first-year': {
    en: {
      subject: 'How is your new {{appliance}} doing?',
      body: 'Dear {{name}},\n\nYour {{appliance}} at {{site}} has been running for a while now. We should like to hear how it is doing, and to look in if anything is unclear.\n\nPlease call us at {{firmPhone}}.\n\nKind regards\n{{firmName}}',
    },
    fr: {
      subject: 'Comment va votre nouvelle {{appliance}} ?',
      body: 'Bonjour {{name}},\n\nVotre {{appliance}}, {{site}}, fonctionne depuis quelque temps. Nous aimerions savoir si tout va bien, et passer si quelque chose n’est pas clair.\n\nAppelez-nous au {{firmPhone}}.\n\nCordialement\n{{firmName}}',
    },
    es: {
      subject: '¿Qué tal su nueva {{appliance}}?',
      body: 'Hola, {{name}}:\n\nSu {{appliance}}, en {{site}}, lleva un tiempo en marcha. Nos gustaría saber si todo va bien y pasar si algo no está claro.\n\nLlámenos al {{firmPhone}}.\n\nAtentamente\n{{firmName}}',
    },
  },
  appointment: {
    en: {
      subject: 'Our visit on {{visitOn}}',
      body: 'Dear {{name}},\n\nWe come to {{site}} on {{visitOn}}, {{visitWindow}}, for your {{appliance}}.\n\nIf that does not suit you, please call us at {{firmPhone}}.\n\nKind regards\n{{firmName}}',
    },
    fr: {
      subject: 'Notre visite le {{visitOn}}',
      body: 'Bonjour {{name}},\n\nNous passons le {{visitOn}}, {{visitWindow}}, {{site}}, pour votre {{appliance}}.\n\nSi cela ne vous convient pas, appelez-nous au {{firmPhone}}.\n\nCordialement\n{{firmName}}',
    },
    es: {
      subject: 'Nuestra visita del {{visitOn}}',
      body: 'Hola, {{name}}:\n\nPasaremos el {{visitOn}}, {{visitWindow}}, por {{site}} para su {{appliance}}.\n\nSi no le viene bien, llámenos al {{firmPhone}}.\n\nAtentamente\n{{firmName}}',
    },
  },
  'appointment-reminder': {
    en: {
      subject: 'Reminder: our visit on {{visitOn}}',
      body: 'Dear {{name}},\n\nThis is to remind you that we come to {{site}} on {{visitOn}}, {{visitWindow}}, for your {{appliance}}. Please see that we can get to the appliance.\n\nIf the day no longer suits you, please call us at {{firmPhone}}.\n\nKind regards\n{{firmName}}',
    },
    fr: {
      subject: 'Rappel : notre visite le {{visitOn}}',
      body: 'Bonjour {{name}},\n\nNous vous rappelons notre passage le {{visitOn}}, {{visitWindow}}, {{site}}, pour votre {{appliance}}. Merci de faire en sorte que l’appareil soit accessible.\n\nSi ce jour ne vous convient plus, appelez-nous au {{firmPhone}}.\n\nCordialement\n{{firmName}}',
    },
    es: {
      subject: 'Recordatorio: nuestra visita del {{visitOn}}',
      body: 'Hola, {{name}}:\n\nLe recordamos que pasaremos el {{visitOn}}, {{visitWindow}}, por {{site}} para su {{appliance}}. Por favor, procure que se pueda llegar al aparato.\n\nSi ese día ya no le viene bien, llámenos al {{firmPhone}}.\n\nAtentamente\n{{firmName}}',
    },
  },
  'on-the-way': {
    en: {
      subject: 'We are on our way',
      body: 'Dear {{name}},\n\n{{technician}} is on the way to {{site}}; we said we would be there {{visitWindow}}.\n\nIf something has come up, please call us at {{firmPhone}}.\n\nKind regards\n{{firmName}}',
    },
    fr: {
      subject: 'Nous sommes en route',
      body: 'Bonjour {{name}},\n\n{{technician}} est en route pour {{site}} ; notre passage est prévu {{visitWindow}}.\n\nEn cas d’empêchement, appelez-nous au {{firmPhone}}.\n\nCordialement\n{{firmName}}',
    },
    es: {
      subject: 'Vamos de camino',
      body: 'Hola, {{name}}:\n\n{{technician}} va de camino a {{site}}; quedamos en llegar {{visitWindow}}.\n\nSi ha surgido algo, llámenos al {{firmPhone}}.\n\nAtentamente\n{{firmName}}',
    },
  },
  recall: {
    en: {
      subject: 'Safety notice for your {{appliance}}',
      body: 'Dear {{name}},\n\n{{noticeSource}} has issued a notice: {{noticeTitle}}. {{noticeApplies}}\n\n{{whatToDo}}\n\n{{safetyWords}}\n\nPlease call us at {{firmPhone}}.\n\n{{firmName}}',
    },
    fr: {
      subject: 'Avis de sécurité pour votre {{appliance}}',
      body: 'Bonjour {{name}},\n\n{{noticeSource}} a publié un avis : {{noticeTitle}}. {{noticeApplies}}\n\n{{whatToDo}}\n\n{{safetyWords}}\n\nAppelez-nous au {{firmPhone}}.\n\n{{firmName}}',
    },
    es: {
      subject: 'Aviso de seguridad para su {{appliance}}',
      body: 'Hola, {{name}}:\n\n{{noticeSource}} ha publicado un aviso: {{noticeTitle}}. {{noticeApplies}}\n\n{{whatToDo}}\n\n{{safetyWords}}\n\nLlámenos al {{firmPhone}}.\n\n{{firmName}}',
    },
  },
};
