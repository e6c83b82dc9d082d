/** The calendar day of an instant in a place; deadlines are days in the site's zone. */
import { Temporal } from 'temporal-polyfill';

export function dayIn(timeZone: string, instant: string): string {
  return Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString();
}

export function isTimeZone(timeZone: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(timeZone);
    return true;
  } catch {
    return false;
  }
}
