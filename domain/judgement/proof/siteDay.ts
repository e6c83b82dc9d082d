/** The calendar day of an instant where the site is. */
import { Temporal } from 'temporal-polyfill';
import type { RunContext } from '../runContext.ts';

/** 'YYYY-MM-DD' at the site. */
export function siteDay(atMs: number, timeZone: string): string {
  const instant = Temporal.Instant.fromEpochMilliseconds(atMs);
  try {
    return instant.toZonedDateTimeISO(timeZone).toPlainDate().toString();
  } catch {
    // A zone this computer does not know: the day in UTC is at most one off.
    return instant.toZonedDateTimeISO('UTC').toPlainDate().toString();
  }
}

/** Every place is a whole number of quarters from UTC, so the day never changes inside one. */
const QUARTER_MS = 900_000;
const memo = new WeakMap<RunContext, Map<number, string>>();

/** The same for a reading of a run, remembered: a run is judged anew with every field that is saved. */
export function dayOfReading(atMs: number, context: RunContext): string {
  const days = memo.get(context) ?? new Map<number, string>();
  memo.set(context, days);
  const quarter = Math.floor(atMs / QUARTER_MS);
  const day = days.get(quarter) ?? siteDay(atMs, context.record.site.timeZone);
  days.set(quarter, day);
  return day;
}
