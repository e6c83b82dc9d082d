/** The calendar day of an instant at the site. */
import { Temporal } from 'temporal-polyfill';

export function dayOfInstant(instant: string, timeZone: string): string {
  return Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString();
}
