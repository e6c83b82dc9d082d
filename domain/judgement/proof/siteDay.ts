/** Compares an instant with a calendar day where the site is. */
import { Temporal } from 'temporal-polyfill';

const DAY_MS = 86_400_000;

/** Is it, at the site, already a later day than this one? */
export function isAfterSiteDay(atMs: number, day: string, timeZone: string): boolean {
  const dayStartUtcMs = Date.parse(`${day}T00:00:00Z`);
  if (Number.isNaN(dayStartUtcMs)) return false;
  // No place is more than 14 hours from UTC: only near the turn of the day does the time zone matter.
  if (atMs < dayStartUtcMs) return false;
  if (atMs >= dayStartUtcMs + 2 * DAY_MS) return true;
  return siteDay(atMs, timeZone) > day;
}

/** The calendar day an instant falls on at the site, 'YYYY-MM-DD'. */
export function siteDay(atMs: number, timeZone: string): string {
  const instant = Temporal.Instant.fromEpochMilliseconds(atMs);
  try {
    return instant.toZonedDateTimeISO(timeZone).toPlainDate().toString();
  } catch {
    // A zone this computer does not know: the day in UTC is at most one off.
    return instant.toZonedDateTimeISO('UTC').toPlainDate().toString();
  }
}
