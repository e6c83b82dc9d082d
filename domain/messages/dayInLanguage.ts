/** A day with weekday and month as words: `Monday, 6 July 2026`, `lundi 6 juillet 2026`, `lunes, 6 de julio de 2026`. */
import type { MessageLanguage } from './messageKinds.ts';

const LOCALES: Readonly<Record<MessageLanguage, string>> = { en: 'en-GB', fr: 'fr', es: 'es' };

export function dayInLanguage(day: string, language: MessageLanguage): string {
  const format = new Intl.DateTimeFormat(LOCALES[language], { dateStyle: 'full', timeZone: 'UTC' });
  return format.format(new Date(`${day}T00:00:00Z`));
}
