/** When somebody is expected, as it is said: `between 09:00 and 12:00`, `at 09:30`. */
import type { MessageLanguage } from './messageKinds.ts';

/** null: no time was agreed. */
export function visitWindowText(
  visit: { readonly plannedFrom: string | null; readonly plannedTo: string | null; readonly startMin: number | null },
  language: MessageLanguage,
): string | null {
  if (visit.plannedFrom !== null && visit.plannedTo !== null) {
    return BETWEEN[language].replace('{from}', visit.plannedFrom).replace('{to}', visit.plannedTo);
  }
  const from = visit.plannedFrom ?? (visit.startMin === null ? null : clock(visit.startMin));
  return from === null ? null : AT[language].replace('{from}', from);
}

const BETWEEN: Readonly<Record<MessageLanguage, string>> = {
  en: 'between {from} and {to}',
  fr: 'entre {from} et {to}',
  es: 'entre las {from} y las {to}',
};

const AT: Readonly<Record<MessageLanguage, string>> = { en: 'at {from}', fr: 'à {from}', es: 'a las {from}' };

function clock(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}
