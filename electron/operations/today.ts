/** The calendar day of an instant in a place; deadlines are days in the site's zone. */
import { Temporal } from 'temporal-polyfill';

export function dayIn(timeZone: string, instant: string): string {
  return Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString();
}

/** A wall-clock time at a place. In the hour that autumn repeats the earlier one is meant, in the one spring skips the later. */
export function instantIn(timeZone: string, day: string, wallTime: string): string {
  return Temporal.PlainDateTime.from(`${day}T${wallTime}`).toZonedDateTime(timeZone).toInstant().toString();
}
