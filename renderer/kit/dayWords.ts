/** A calendar day with its month as a word: 04/07 is read two ways, 4 Jul 2026 only one. */
import { Temporal } from 'temporal-polyfill';
import { SHORT_MONTHS, SHORT_WEEKDAYS } from '../../domain/text/calendarWords.ts';

/** `4 Jul 2026`; with `weekday`, `Sat 4 Jul 2026`. */
export function dayWords(day: string, { weekday = false }: { readonly weekday?: boolean } = {}): string {
  const date = Temporal.PlainDate.from(day);
  const words = `${date.day} ${SHORT_MONTHS[date.month - 1]} ${date.year}`;
  return weekday ? `${weekdayWords(date.dayOfWeek)} ${words}` : words;
}

/** `Sat 4 Jul`, where the year stands above. */
export function shortDayWords(day: string): string {
  return dayWords(day, { weekday: true }).replace(/ \d+$/, '');
}

/** 1 is Monday, as in ISO 8601. */
export function weekdayWords(dayOfWeek: number): string {
  return SHORT_WEEKDAYS[dayOfWeek - 1] ?? '';
}

/** `4 Jul 2026, 14:05`, in the given zone or this computer's. */
export function instantWords(instant: string, timeZone = Temporal.Now.timeZoneId()): string {
  const at = Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone);
  const time = `${String(at.hour).padStart(2, '0')}:${String(at.minute).padStart(2, '0')}`;
  return `${dayWords(at.toPlainDate().toString())}, ${time}`;
}

/** `08:30` for 510 minutes after midnight. */
export function clockWords(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}
