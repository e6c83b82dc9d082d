/**
 * The wordings that come with the program; a firm's own take their place. French and Spanish wait for a native reader, and
 * screens say so until a firm has put in its own.
 */
import type { Wording } from './fillTemplate.ts';
import { LETTER_WORDINGS } from './letterWordings.ts';
import type { MessageKind, MessageLanguage, WrittenChannel } from './messageKinds.ts';
import { TEXT_WORDINGS } from './textWordings.ts';

export function awaitsNativeReader(language: MessageLanguage): boolean {
  return language !== 'en';
}

export function builtInWording(kind: MessageKind, language: MessageLanguage, channel: WrittenChannel): Wording {
  return (channel === 'text' ? TEXT_WORDINGS : LETTER_WORDINGS)[kind][language];
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

/** The firm's own wording may say it in other words: these in any text mean that it carries safety advice. */
const SAFETY_MARKS =
  /\b(carbon monoxide|monoxyde de carbone|mon[oó]xido de carbono|smell gas|odeur de gaz|huele a gas)\b/iu;

/** Whether a wording gives advice for an emergency: then no number on file, no printout. */
export function carriesSafetyWords({ subject, body }: Wording): boolean {
  return /\{\{\s*(safetyWords|emergencyNumber)\s*\}\}/u.test(body) || SAFETY_MARKS.test(`${subject}\n${body}`);
}
