/** A date known to the day, the month or only the year: a plate says `2025-W40` or `10/2025`, an invoice the very day. */
import { dayWords } from '../kit/dayWords.ts';
import { readDay } from './FormReader.ts';

export type Precision = 'day' | 'month' | 'year';
export type ImpreciseDay = { readonly on: string; readonly precision: Precision };

/** Of a month or year its first day is kept, beside how precise it is. Null when the text is no date. */
export function readImpreciseDay(text: string): ImpreciseDay | null {
  const plain = text.trim();
  if (/^\d{4}$/.test(plain)) return { on: `${plain}-01-01`, precision: 'year' };
  const yearMonth = /^(\d{4})[-/.](\d{1,2})$/.exec(plain) ?? reversed(/^(\d{1,2})[-/.](\d{4})$/.exec(plain));
  if (yearMonth) return monthOf(yearMonth[1], Number(yearMonth[2]));
  const named = /^([a-z]{3,})\.?\s*(\d{4})$/i.exec(plain);
  if (named) return monthOf(named[2], monthNumber(named[1] ?? ''));
  const read = readDay(plain);
  return read.ok && read.day !== null ? { on: read.day, precision: 'day' } : null;
}

export function impreciseDayWords({ on, precision }: ImpreciseDay): string {
  if (precision === 'year') return on.slice(0, 4);
  return precision === 'month' ? dayWords(on).replace(/^\d+ /, '') : dayWords(on);
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

function monthNumber(word: string): number {
  return MONTHS.findIndex((month) => word.toLowerCase().startsWith(month)) + 1;
}

function monthOf(year: string | undefined, month: number): ImpreciseDay | null {
  if (year === undefined || month < 1 || month > 12) return null;
  return { on: `${year}-${String(month).padStart(2, '0')}-01`, precision: 'month' };
}

function reversed(match: RegExpExecArray | null): readonly (string | undefined)[] | null {
  return match === null ? null : [match[0], match[2], match[1]];
}
