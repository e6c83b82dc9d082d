/** A date known to the day, the month or only the year: a plate says `2025-W40` or `10/2025`, an invoice the very day. */
import { dayWords } from '../kit/dayWords.ts';
import { readDay } from './FormReader.ts';

export type Precision = 'day' | 'month' | 'year';
export type ImpreciseDay = { readonly on: string; readonly precision: Precision };

export type ReadImpreciseDay =
  | { readonly ok: true; readonly date: ImpreciseDay }
  | { readonly ok: false; readonly why: string };

const EXAMPLES = 'Example: 4 Jul 2026, Jul 2026 or 2026.';

/** Of a month or year its first day is kept, beside how precise it is. */
export function readImpreciseDay(text: string): ReadImpreciseDay {
  const plain = text.trim();
  if (plain === '') return { ok: false, why: 'Needed.' };
  if (/^\d{4}$/.test(plain)) return { ok: true, date: { on: `${plain}-01-01`, precision: 'year' } };
  const yearMonth = /^(\d{4})[-/.](\d{1,2})$/.exec(plain) ?? reversed(/^(\d{1,2})[-/.](\d{4})$/.exec(plain));
  if (yearMonth) return monthOf(yearMonth[1], Number(yearMonth[2]));
  const named = /^([a-z]{3,})\.?\s*(\d{4})$/i.exec(plain);
  if (named) return monthOf(named[2], monthNumber(named[1] ?? ''));
  const read = readDay(plain);
  if (!read.ok)
    return {
      ok: false,
      why: read.meanings.length > 0 ? `${read.why} Write the month as a word.` : `Not a date. ${EXAMPLES}`,
    };
  return read.day === null ? { ok: false, why: 'Needed.' } : { ok: true, date: { on: read.day, precision: 'day' } };
}

export function impreciseDayWords({ on, precision }: ImpreciseDay): string {
  if (precision === 'year') return on.slice(0, 4);
  return precision === 'month' ? dayWords(on).replace(/^\d+ /, '') : dayWords(on);
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

function monthNumber(word: string): number {
  return MONTHS.findIndex((month) => word.toLowerCase().startsWith(month)) + 1;
}

function monthOf(year: string | undefined, month: number): ReadImpreciseDay {
  if (year === undefined || month < 1 || month > 12) return { ok: false, why: `Not a date. ${EXAMPLES}` };
  return { ok: true, date: { on: `${year}-${String(month).padStart(2, '0')}-01`, precision: 'month' } };
}

function reversed(match: RegExpExecArray | null): readonly (string | undefined)[] | null {
  return match === null ? null : [match[0], match[2], match[1]];
}
