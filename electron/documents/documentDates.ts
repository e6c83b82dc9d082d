/** Days and moments as documents print them: the month is a word, so that nobody takes 04/07 for the other one. */
import { Temporal } from 'temporal-polyfill';
import { MONTHS, WEEKDAYS } from '../../domain/text/calendarWords.ts';

export function dayText(day: string, precision: 'day' | 'month' | 'year' = 'day'): string {
  const date = Temporal.PlainDate.from(day);
  const month = MONTHS[date.month - 1] ?? '';
  if (precision === 'year') return String(date.year);
  return precision === 'month' ? `${month} ${date.year}` : `${date.day} ${month} ${date.year}`;
}

export function weekdayText(day: string): string {
  return `${WEEKDAYS[Temporal.PlainDate.from(day).dayOfWeek - 1] ?? ''} ${dayText(day)}`;
}

/** At the site's own clock; the day is left out on the day of the visit. */
export function momentText(instant: string, timeZone: string, visitOn: string | null = null): string {
  const moment = atSite(instant, timeZone);
  const time = `${String(moment.hour).padStart(2, '0')}:${String(moment.minute).padStart(2, '0')}`;
  const day = moment.toPlainDate().toString();
  return day === visitOn ? time : `${dayText(day)}, ${time}`;
}

export function dayAtSite(instant: string, timeZone: string): string {
  return atSite(instant, timeZone).toPlainDate().toString();
}

/** A record may carry a zone that this machine does not know: then the moment is given in UTC rather than not at all. */
function atSite(instant: string, timeZone: string): Temporal.ZonedDateTime {
  const moment = Temporal.Instant.from(instant);
  try {
    return moment.toZonedDateTimeISO(timeZone);
  } catch {
    return moment.toZonedDateTimeISO('UTC');
  }
}
