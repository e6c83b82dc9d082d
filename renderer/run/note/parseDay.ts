/**
 * A calendar day as people type it. `04/07/2025` is July to one and April to another: where both could be meant the answer
 * is both, so that the screen can ask, and never a guess.
 */
import { MONTHS } from '../../../domain/text/calendarWords.ts';

export type TypedDay =
  | { readonly kind: 'day'; readonly on: string }
  | { readonly kind: 'ambiguous'; readonly meanings: readonly [string, string] }
  | { readonly kind: 'not-a-day' };

export function parseDay(text: string): TypedDay {
  const plain = text.trim().toLowerCase();
  const iso = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})$/.exec(plain);
  if (iso) return only(dayOf(iso[1], iso[2], iso[3]));
  const named = /^(\d{1,2})(?:st|nd|rd|th)?[\s.-]*([a-z]{3,})\.?[\s,-]*(\d{4})$/.exec(plain);
  if (named) return only(dayOf(named[3], monthNumber(named[2]), named[1]));
  const monthFirst = /^([a-z]{3,})\.?\s*(\d{1,2})(?:st|nd|rd|th)?[\s,]+(\d{4})$/.exec(plain);
  if (monthFirst) return only(dayOf(monthFirst[3], monthNumber(monthFirst[1]), monthFirst[2]));
  const slashed = /^(\d{1,2})[-./ ](\d{1,2})[-./ ](\d{4})$/.exec(plain);
  if (!slashed) return { kind: 'not-a-day' };
  const dayThenMonth = dayOf(slashed[3], slashed[2], slashed[1]);
  const monthThenDay = dayOf(slashed[3], slashed[1], slashed[2]);
  if (dayThenMonth !== null && monthThenDay !== null && dayThenMonth !== monthThenDay) {
    return { kind: 'ambiguous', meanings: [dayThenMonth, monthThenDay] };
  }
  return only(dayThenMonth ?? monthThenDay);
}

/** With the month as a word, so that it reads the same everywhere: `4 July 2025`. */
export function dayInWords(on: string): string {
  const [year, month, day] = on.split('-').map(Number);
  return `${day} ${MONTHS[(month ?? 1) - 1] ?? ''} ${year}`;
}

function only(on: string | null): TypedDay {
  return on === null ? { kind: 'not-a-day' } : { kind: 'day', on };
}

function monthNumber(word = ''): string | undefined {
  const index = MONTHS.findIndex((month) => month.toLowerCase().startsWith(word));
  return index < 0 ? undefined : String(index + 1);
}

function dayOf(year = '', month = '', day = ''): string | null {
  const on = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const date = new Date(`${on}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(on) ? on : null;
}
