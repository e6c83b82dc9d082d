/**
 * A date in a list: ISO, three numbers in the file's order, a month as a word, or only a month or year where that will do.
 * Day and month are never guessed, a two-figure year never completed, and an order that was chosen is never bent.
 */
import { readDayText } from '../judgement/mistakes/readDayText.ts';
import { err, ok, type Result } from '../result.ts';
import type { ImportDate, ImportDayOrder } from './importRow.ts';

export type ImportDayProblem =
  | { readonly code: 'not-a-day' | 'short-year' }
  | { readonly code: 'day-month-ambiguous'; readonly readings: readonly [dayFirst: string, monthFirst: string] };

export function readImportDay(text: string, order: ImportDayOrder | null): Result<ImportDate, ImportDayProblem> {
  // Spreadsheets write a date as midnight of its day; any other time of day says that it is no date.
  const plain = text.trim().replace(/[T ]00:00(:00(\.0+)?)?Z?$/u, '');
  if (/^\d{1,2}[./\- ]\d{1,2}[./\- ]\d{2}$/u.test(plain)) return err({ code: 'short-year' });
  const partial = readPartial(plain);
  if (partial !== null) return partial;
  const named = readNamed(plain);
  if (named !== null) return dayOrProblem(readDayText(named));
  const read = readDayText(plain);
  if (read.ok)
    return isInOrder(plain, read.value, order) ? ok({ on: read.value, precision: 'day' }) : err({ code: 'not-a-day' });
  if (read.error.code === 'not-a-day') return err({ code: 'not-a-day' });
  const { readings } = read.error;
  if (order === null) return err({ code: 'day-month-ambiguous', readings });
  return ok({ on: order === 'day-first' ? readings[0] : readings[1], precision: 'day' });
}

/** `2019`, `2019-03`, `03/2019`: a month or a year has one meaning. */
function readPartial(plain: string): Result<ImportDate, ImportDayProblem> | null {
  if (/^(19|20)\d{2}$/u.test(plain)) return ok({ on: `${plain}-01-01`, precision: 'year' });
  const parts = /^(\d{4})[-/.](\d{1,2})$/u.exec(plain) ?? /^(?<month>\d{1,2})[-/.](?<year>\d{4})$/u.exec(plain);
  if (parts === null) return null;
  const year = parts.groups?.['year'] ?? parts[1] ?? '';
  const month = Number(parts.groups?.['month'] ?? parts[2]);
  if (month < 1 || month > 12) return err({ code: 'not-a-day' });
  return ok({ on: `${year}-${String(month).padStart(2, '0')}-01`, precision: 'month' });
}

const MONTHS: readonly (readonly string[])[] = [
  ['jan', 'janv', 'ene'],
  ['feb', 'fev', 'févr', 'fév'],
  ['mar', 'mars'],
  ['apr', 'avr', 'abr'],
  ['may', 'mai'],
  ['jun', 'juin'],
  ['jul', 'juil'],
  ['aug', 'aout', 'août', 'ago'],
  ['sep', 'sept'],
  ['oct'],
  ['nov'],
  ['dec', 'déc', 'dic'],
];

/** `4 Mar 2024` and `March 4, 2024`, also in French and Spanish, as ISO; null: no month is named. */
function readNamed(plain: string): string | null {
  const dayFirst = /^(\d{1,2})(?:st|nd|rd|th|er)?[\s.-]*(\p{L}{3,})\.?[\s,.-]*(\d{4})$/u.exec(plain);
  const monthFirst = /^(\p{L}{3,})\.?\s*(\d{1,2})(?:st|nd|rd|th)?[\s,]+(\d{4})$/u.exec(plain);
  const [day, word, year] = dayFirst
    ? [dayFirst[1], dayFirst[2], dayFirst[3]]
    : [monthFirst?.[2], monthFirst?.[1], monthFirst?.[3]];
  if (day === undefined || word === undefined || year === undefined) return null;
  const wanted = word.toLowerCase();
  const month = MONTHS.findIndex((names) => names.some((name) => wanted.startsWith(name))) + 1;
  return month === 0 ? null : `${year}-${String(month).padStart(2, '0')}-${day.padStart(2, '0')}`;
}

/** 25/12/2024 has one meaning, but in a file said to be month first it shows that something else is wrong. */
function isInOrder(plain: string, day: string, order: ImportDayOrder | null): boolean {
  const parts = /^(\d{1,2})([./\- ])\s?(\d{1,2})\2\s?\d{4}$/u.exec(plain);
  if (parts === null || order === null || parts[2] === '.') return true;
  const [, month, date] = day.split('-').map(Number);
  const [first, second] = [Number(parts[1]), Number(parts[3])];
  return order === 'day-first' ? first === date && second === month : first === month && second === date;
}

function dayOrProblem(read: ReturnType<typeof readDayText>): Result<ImportDate, ImportDayProblem> {
  return read.ok ? ok({ on: read.value, precision: 'day' }) : err({ code: 'not-a-day' });
}
