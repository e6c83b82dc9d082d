/** Turns what a form holds into an operation's input, and collects under each field why it cannot be read. */
import { Temporal } from 'temporal-polyfill';
import type { Dimension } from '../../domain/quantity/quantities.ts';
import { isTimeZone } from '../../domain/text/isTimeZone.ts';
import { dayWords } from '../kit/dayWords.ts';
import { parseDay } from '../run/note/parseDay.ts';
import { type AmountProblem, readAmount, type TypedAmount } from './typedAmount.ts';

export type FieldErrors = Readonly<Record<string, string>>;

export class FormReader {
  readonly #errors: Record<string, string> = {};

  get errors(): FieldErrors {
    return this.#errors;
  }

  fail(field: string, why: string): void {
    this.#errors[field] ??= why;
  }

  /** Empty means: not known. */
  optional(text: string): string | null {
    const trimmed = text.trim();
    return trimmed === '' ? null : trimmed;
  }

  amount(field: string, typed: TypedAmount, dimension: Dimension): number | null {
    const read = readAmount(dimension, typed);
    if (read.ok) return read.value;
    this.fail(field, amountWords(read.error));
    return null;
  }

  whole(field: string, text: string): number | null {
    const trimmed = text.trim();
    if (trimmed === '') return null;
    if (/^\d{1,6}$/.test(trimmed)) return Number(trimmed);
    this.fail(field, 'A whole number.');
    return null;
  }

  timeZone(field: string, text: string): string {
    const timeZone = text.trim();
    if (timeZone !== '' && !isTimeZone(timeZone))
      this.fail(field, 'No time zone this computer knows. Example: America/Toronto.');
    return timeZone;
  }

  day(field: string, text: string): string | null {
    const read = readDay(text);
    if (read.ok) return read.day;
    this.fail(field, read.why);
    return null;
  }

  /** A day that must be given. What comes back on failure never leaves the form, which is not sent then. */
  neededDay(field: string, text: string): string {
    const day = this.day(field, text);
    if (day === null) this.fail(field, 'Needed.');
    return day ?? '';
  }
}

export type ReadDay =
  | { readonly ok: true; readonly day: string | null }
  | { readonly ok: false; readonly why: string; readonly meanings: readonly string[] };

/** Understands `4 Jul 2026`, `2026-07-04`, `today`; asks where day and month could be swapped. */
export function readDay(text: string, today = Temporal.Now.plainDateISO()): ReadDay {
  const plain = text.trim().toLowerCase();
  if (plain === '') return { ok: true, day: null };
  const near = NEAR_DAYS[plain];
  if (near !== undefined) return { ok: true, day: today.add({ days: near }).toString() };
  const typed = parseDay(text);
  switch (typed.kind) {
    case 'day':
      return { ok: true, day: typed.on };
    case 'ambiguous':
      return {
        ok: false,
        why: `${typed.meanings.map((meaning) => dayWords(meaning)).join(' or ')}?`,
        meanings: typed.meanings,
      };
    case 'not-a-day':
      return { ok: false, why: 'Not a day. Example: 4 Jul 2026.', meanings: [] };
  }
}

const NEAR_DAYS: Readonly<Record<string, number>> = { yesterday: -1, today: 0, tomorrow: 1 };

function amountWords(problem: AmountProblem): string {
  switch (problem.code) {
    case 'not-a-number':
      return 'Not a number. Example: 24.5 or 24,5.';
    case 'ambiguous':
      return `${problem.meanings.join(' or ')}? Write it without a thousands mark.`;
    case 'unknown-unit':
      return `“${problem.unit}” is no unit of this field. Choose the unit beside it.`;
  }
}
