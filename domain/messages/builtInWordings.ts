/**
 * The wordings that come with the program, letter and e-mail alike; a firm's own take their place. French and Spanish wait
 * for a native reader, and screens say so until a firm has put in its own.
 */
import type { Wording } from './fillTemplate.ts';

export const MESSAGE_KINDS = ['service-due', 'first-year', 'appointment', 'recall'] as const;
export type MessageKind = (typeof MESSAGE_KINDS)[number];
export const MESSAGE_LANGUAGES = ['en', 'fr', 'es'] as const;
export type MessageLanguage = (typeof MESSAGE_LANGUAGES)[number];

export function awaitsNativeReader(language: MessageLanguage): boolean {
  return language !== 'en';
}

export function builtInWording(kind: MessageKind, language: MessageLanguage): Wording {
  return WORDINGS[kind][language];
}

/**
 * Out first, touch no switch, call from outside: the usual caution of gas and CO safety leaflets (common practice, no single
 * source). Only ever with a number to call.
 */
export function safetyWords(emergencyNumber: string | null, language: MessageLanguage): string | null {
  const number = emergencyNumber?.trim() ?? '';
  return number === '' ? null : SAFETY[language].replace('{number}', number);
}

const SAFETY: Readonly<Record<MessageLanguage, string>> = {
  en: 'If you smell gas or a carbon monoxide alarm sounds: leave the house first, touch no switch, and call {number} from outside.',
  fr: 'Si vous sentez une odeur de gaz ou si un détecteur de monoxyde de carbone sonne : sortez d’abord, ne touchez aucun interrupteur et appelez le {number} depuis l’extérieur.',
  es: 'Si huele a gas o suena un detector de monóxido de carbono: salga primero, no toque ningún interruptor y llame al {number} desde fuera.',
};

const WORDINGS: Readonly<Record<MessageKind, Readonly<Record<MessageLanguage, Wording>>>> = {
  'service-due': {
    en: {
      subject: 'Annual service of your {{appliance}}',
      body: 'Dear {{name}},\n\nthe annual service of your {{appliance}} (serial number {{serial}}) at {{site}} is due on {{dueOn}}. The latest day is {{latestOn}}.\n\nPlease call us at {{firmPhone}} to arrange a day.\n\nKind regards\n{{firmName}}',
    },
    fr: {
      subject: 'Entretien annuel de votre {{appliance}}',
      body: 'Bonjour {{name}},\n\nl’entretien annuel de votre {{appliance}} (numéro de série {{serial}}), {{site}}, est prévu pour le {{dueOn}}. La date limite est le {{latestOn}}.\n\nAppelez-nous au {{firmPhone}} pour convenir d’un jour.\n\nCordialement\n{{firmName}}',
    },
    es: {
      subject: 'Revisión anual de su {{appliance}}',
      body: 'Hola, {{name}}:\n\nLa revisión anual de su {{appliance}} (número de serie {{serial}}), en {{site}}, corresponde el {{dueOn}}. El último día es el {{latestOn}}.\n\nLlámenos al {{firmPhone}} para acordar un día.\n\nAtentamente\n{{firmName}}',
    },
  },
  'first-year': {
    en: {
      subject: 'How is your new {{appliance}} doing?',
      body: 'Dear {{name}},\n\nyour {{appliance}} at {{site}} has been running for a while now. We should like to hear how it is doing, and to look in if anything is unclear.\n\nPlease call us at {{firmPhone}}.\n\nKind regards\n{{firmName}}',
    },
    fr: {
      subject: 'Comment va votre nouvelle {{appliance}} ?',
      body: 'Bonjour {{name}},\n\nvotre {{appliance}}, {{site}}, fonctionne depuis quelque temps. Nous aimerions savoir si tout va bien, et passer si quelque chose n’est pas clair.\n\nAppelez-nous au {{firmPhone}}.\n\nCordialement\n{{firmName}}',
    },
    es: {
      subject: '¿Qué tal su nueva {{appliance}}?',
      body: 'Hola, {{name}}:\n\nSu {{appliance}}, en {{site}}, lleva un tiempo en marcha. Nos gustaría saber si todo va bien y pasar si algo no está claro.\n\nLlámenos al {{firmPhone}}.\n\nAtentamente\n{{firmName}}',
    },
  },
  appointment: {
    en: {
      subject: 'Our visit on {{visitOn}}',
      body: 'Dear {{name}},\n\nwe come to {{site}} on {{visitOn}}, {{visitWindow}}, for your {{appliance}}.\n\nIf that does not suit you, please call us at {{firmPhone}}.\n\nKind regards\n{{firmName}}',
    },
    fr: {
      subject: 'Notre visite le {{visitOn}}',
      body: 'Bonjour {{name}},\n\nnous passons le {{visitOn}}, {{visitWindow}}, {{site}}, pour votre {{appliance}}.\n\nSi cela ne vous convient pas, appelez-nous au {{firmPhone}}.\n\nCordialement\n{{firmName}}',
    },
    es: {
      subject: 'Nuestra visita del {{visitOn}}',
      body: 'Hola, {{name}}:\n\nPasaremos el {{visitOn}}, {{visitWindow}}, por {{site}} para su {{appliance}}.\n\nSi no le viene bien, llámenos al {{firmPhone}}.\n\nAtentamente\n{{firmName}}',
    },
  },
  recall: {
    en: {
      subject: 'Safety notice for your {{appliance}}',
      body: 'Dear {{name}},\n\n{{noticeSource}} has issued a notice: {{noticeTitle}}. According to our files your {{appliance}}, serial number {{serial}}, at {{site}} is among the appliances it is about.\n\n{{whatToDo}}\n\n{{safetyWords}}\n\nPlease call us at {{firmPhone}}.\n\n{{firmName}}',
    },
    fr: {
      subject: 'Avis de sécurité pour votre {{appliance}}',
      body: 'Bonjour {{name}},\n\n{{noticeSource}} a publié un avis : {{noticeTitle}}. D’après nos dossiers, votre {{appliance}}, numéro de série {{serial}}, {{site}}, fait partie des appareils concernés.\n\n{{whatToDo}}\n\n{{safetyWords}}\n\nAppelez-nous au {{firmPhone}}.\n\n{{firmName}}',
    },
    es: {
      subject: 'Aviso de seguridad para su {{appliance}}',
      body: 'Hola, {{name}}:\n\n{{noticeSource}} ha publicado un aviso: {{noticeTitle}}. Según nuestros archivos, su {{appliance}}, número de serie {{serial}}, en {{site}}, está entre los aparatos afectados.\n\n{{whatToDo}}\n\n{{safetyWords}}\n\nLlámenos al {{firmPhone}}.\n\n{{firmName}}',
    },
  },
};

/** The firm's own wording may say it in other words: these in any text mean that it carries safety advice. */
const SAFETY_MARKS =
  /\b(carbon monoxide|monoxyde de carbone|mon[oó]xido de carbono|smell gas|odeur de gaz|huele a gas)\b/iu;

/** Whether a wording gives advice for an emergency: then no number on file, no printout. */
export function carriesSafetyWords({ subject, body }: Wording): boolean {
  return /\{\{\s*(safetyWords|emergencyNumber)\s*\}\}/u.test(body) || SAFETY_MARKS.test(`${subject}\n${body}`);
}
