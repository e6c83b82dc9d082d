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
import { calendarDayOf, calendarDayText, dayNumberOf, monthLength, readCalendarDay } from './calendarDay.ts';

export type Period = { readonly days: number } | { readonly months: number };

/** The last day of a period that begins with an event on `eventOn`; negative periods lead back. */
export function lastDayOf(eventOn: string, period: Period): string {
  return 'days' in period ? addDays(eventOn, period.days) : addMonths(eventOn, period.months);
}

export function addDays(day: string, days: number): string {
  return calendarDayText(calendarDayOf(dayNumberOf(readCalendarDay(day)) + days));
}

export function addMonths(day: string, months: number): string {
  const from = readCalendarDay(day);
  const monthNumber = from.year * 12 + from.month - 1 + months;
  const year = Math.floor(monthNumber / 12);
  const month = monthNumber - year * 12 + 1;
  return calendarDayText({ year, month, day: Math.min(from.day, monthLength(year, month)) });
}

/** Days from one to the other; negative when `to` is the earlier one. */
export function daysFromTo(from: string, to: string): number {
  return dayNumberOf(readCalendarDay(to)) - dayNumberOf(readCalendarDay(from));
}

/** 1 Monday … 7 Sunday, as in ISO 8601. */
export function weekdayOf(day: string): number {
  // 1970-01-01 was a Thursday.
  const sinceMonday = (dayNumberOf(readCalendarDay(day)) + 3) % 7;
  return (sinceMonday < 0 ? sinceMonday + 7 : sinceMonday) + 1;
}

/** The day of the month was missing in the month the period ends in. */
export function isClamped(eventOn: string, endsOn: string, period: Period): boolean {
  return 'months' in period && eventOn.slice(8) !== endsOn.slice(8);
}

/** Of `2026-10`. */
export function lastDayOfMonth(month: string): string {
  const first = readCalendarDay(`${month}-01`);
  return calendarDayText({ ...first, day: monthLength(first.year, first.month) });
}

export function monthBefore(month: string): string {
  return addMonths(`${month}-01`, -1).slice(0, 7);
}

export function laterOf(a: string, b: string): string {
  return a > b ? a : b;
}

export function earlierOf(a: string, b: string): string {
  return a < b ? a : b;
}

export type KnownToPrecision = { readonly on: string; readonly precision: 'day' | 'month' | 'year' };

/** A date known only to its month or year is counted from its first day: the cautious end. */
export function cautiousDay(date: KnownToPrecision): string {
  if (date.precision === 'year') return `${date.on.slice(0, 4)}-01-01`;
  return date.precision === 'month' ? `${date.on.slice(0, 7)}-01` : date.on;
}
