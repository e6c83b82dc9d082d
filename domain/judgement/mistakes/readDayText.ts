/** A day as people write it. Day and month are never guessed: where both ways are days, both are given back. */
import { Temporal } from 'temporal-polyfill';
import { err, ok, type Result } from '../../result.ts';

export type DayProblem =
  | { readonly code: 'not-a-day'; readonly text: string }
  /** Show the month as a word and ask. */
  | { readonly code: 'day-month-ambiguous'; readonly readings: readonly [dayFirst: string, monthFirst: string] };

/** ISO days, and three numbers between dots, slashes, dashes or spaces, the year last. The result is ISO. */
export function readDayText(text: string): Result<string, DayProblem> {
  const iso = /^\s*(\d{4})-(\d{1,2})-(\d{1,2})\s*$/.exec(text);
  if (iso) {
    const day = dayOf(Number(iso[1]), Number(iso[2]), Number(iso[3]));
    return day === null ? err({ code: 'not-a-day', text }) : ok(day);
  }
  const parts = /^\s*(\d{1,2})([./\- ])\s?(\d{1,2})\2\s?(\d{4})\s*$/.exec(text);
  if (!parts) return err({ code: 'not-a-day', text });
  const [one, other, year] = [Number(parts[1]), Number(parts[3]), Number(parts[4])];
  const dayFirst = dayOf(year, other, one);
  const monthFirst = dayOf(year, one, other);
  // Dots are only ever written with the day first.
  if (parts[2] === '.') return dayFirst === null ? err({ code: 'not-a-day', text }) : ok(dayFirst);
  if (dayFirst !== null && monthFirst !== null && dayFirst !== monthFirst) {
    return err({ code: 'day-month-ambiguous', readings: [dayFirst, monthFirst] });
  }
  const only = dayFirst ?? monthFirst;
  return only === null ? err({ code: 'not-a-day', text }) : ok(only);
}

function dayOf(year: number, month: number, day: number): string | null {
  try {
    return Temporal.PlainDate.from({ year, month, day }, { overflow: 'reject' }).toString();
  } catch {
    return null;
  }
}
