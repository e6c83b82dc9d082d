/**
 * Days of the ISO calendar as numbers, for the lists: a store's due days are some million additions, and a Temporal object
 * for each would cost ten times the rest.
 *
 * Formula  day number: days since 1970-01-01, from the civil date in 400-year eras beginning on 1 March
 * Valid    0000-01-01 … 9999-12-31 as YYYY-MM-DD; anything else throws, a day the month lacks too
 * Source   Gregorian calendar, ISO 8601; the era arithmetic is the usual one (from memory)
 * Checked  tests/domain/coverage/calendarDay.test.ts: every day of 800 years against Temporal
 */

export type CalendarDay = { readonly year: number; readonly month: number; readonly day: number };

const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const DAYS_PER_ERA = 146_097;
/** Day number of 0000-03-01, the beginning of an era. */
const ERA_BEGINS = -719_468;

export function monthLength(year: number, month: number): number {
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return month === 2 && isLeap ? 29 : (MONTH_LENGTHS[month - 1] ?? 0);
}

export function readCalendarDay(text: string): CalendarDay {
  const year = digits(text, 0, 4);
  const month = digits(text, 5, 7);
  const day = digits(text, 8, 10);
  const isDay =
    text.length === 10 &&
    year >= 0 &&
    text[4] === '-' &&
    text[7] === '-' &&
    day >= 1 &&
    day <= monthLength(year, month);
  if (!isDay) throw new RangeError(`not a calendar day: ${text}`);
  return { year, month, day };
}

export function calendarDayText({ year, month, day }: CalendarDay): string {
  if (year < 0 || year > 9999) throw new RangeError(`outside the years 0 to 9999: ${year}`);
  return `${year < 1000 ? String(year).padStart(4, '0') : year}-${month < 10 ? '0' : ''}${month}-${day < 10 ? '0' : ''}${day}`;
}

export function dayNumberOf({ year, month, day }: CalendarDay): number {
  const shifted = month > 2 ? year : year - 1;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * DAYS_PER_ERA + dayOfEra + ERA_BEGINS;
}

export function calendarDayOf(dayNumber: number): CalendarDay {
  const sinceEra = dayNumber - ERA_BEGINS;
  const era = Math.floor(sinceEra / DAYS_PER_ERA);
  const dayOfEra = sinceEra - era * DAYS_PER_ERA;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

/** NaN where it is no number, which no comparison lets pass. */
function digits(text: string, from: number, to: number): number {
  let number = 0;
  for (let index = from; index < to; index += 1) {
    const digit = text.charCodeAt(index) - 48;
    if (!(digit >= 0 && digit <= 9)) return Number.NaN;
    number = number * 10 + digit;
  }
  return number;
}
