/** Whether a text names a time zone that days can be counted in here: `America/Toronto`, `UTC`. */
import { Temporal } from 'temporal-polyfill';

export function isTimeZone(text: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(text);
    return true;
  } catch {
    return false;
  }
}
