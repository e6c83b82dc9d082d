/**
 * The one rule for counting days and months, used by every date of cover, registration and service.
 *
 * Rule     Days: the day of the event is not counted, the day after is day 1, the period ends at the end of its last day.
 *          Months: the same day of the month n months later; a day that month lacks becomes its last day. Several
 *          intervals are always counted from the anchor, never from the last result: that would drift (31 Jan → 28 Feb →
 *          28 Mar instead of 31 Mar).
 *          The last day stays where it falls, on a Sunday too: no sheet is assumed to move it.
 * Source   Regulation (EEC, Euratom) 1182/71 art. 3(1) and 3(2)(b), (c); BGB §§ 187(1), 188(1)–(3), the same rules
 * Valid    calendar days of the ISO calendar as YYYY-MM-DD; anything else throws
 * Checked  tests/domain/coverage/coverCases.test.ts by hand, tests/domain/coverage/period.test.ts against luxon
 */
import { Temporal } from 'temporal-polyfill';

export type Period = { readonly days: number } | { readonly months: number };

/** The last day of a period that begins with an event on `eventOn`; negative periods lead back. */
export function lastDayOf(eventOn: string, period: Period): string {
  return 'days' in period ? addDays(eventOn, period.days) : addMonths(eventOn, period.months);
}

export function addDays(day: string, days: number): string {
  return remembered(`${day} ${days}d`, () => Temporal.PlainDate.from(day).add({ days }).toString());
}

export function addMonths(day: string, months: number): string {
  return remembered(`${day} ${months}m`, () =>
    Temporal.PlainDate.from(day).add({ months }, { overflow: 'constrain' }).toString(),
  );
}

/** Days from one to the other; negative when `to` is the earlier one. */
export function daysFromTo(from: string, to: string): number {
  return Temporal.PlainDate.from(from).until(to, { largestUnit: 'days' }).days;
}

/** 1 Monday … 7 Sunday, as in ISO 8601. */
export function weekdayOf(day: string): number {
  return Temporal.PlainDate.from(day).dayOfWeek;
}

/** The day of the month was missing in the month the period ends in. */
export function isClamped(eventOn: string, endsOn: string, period: Period): boolean {
  return 'months' in period && eventOn.slice(8) !== endsOn.slice(8);
}

export function lastDayOfMonth(month: string): string {
  return remembered(`${month} last`, () => Temporal.PlainYearMonth.from(month).toPlainDate({ day: 31 }).toString());
}

export function monthBefore(month: string): string {
  return remembered(`${month} before`, () => Temporal.PlainYearMonth.from(month).subtract({ months: 1 }).toString());
}

export function laterOf(a: string, b: string): string {
  return a.localeCompare(b) > 0 ? a : b;
}

export type KnownToPrecision = { readonly on: string; readonly precision: 'day' | 'month' | 'year' };

/** A date known only to its month or year is counted from its first day: the cautious end. */
export function cautiousDay(date: KnownToPrecision): string {
  if (date.precision === 'year') return `${date.on.slice(0, 4)}-01-01`;
  return date.precision === 'month' ? `${date.on.slice(0, 7)}-01` : date.on;
}

/** The same few thousand days come back for every appliance of a store; working one out costs 5 µs, finding it 0.1 µs. */
const known = new Map<string, string>();
const KNOWN_MAX = 100_000;

function remembered(key: string, workOut: () => string): string {
  const found = known.get(key);
  if (found !== undefined) return found;
  if (known.size >= KNOWN_MAX) known.clear();
  const day = workOut();
  known.set(key, day);
  return day;
}
