/**
 * Made ≤ sold ≤ installed ≤ started ≤ registered ≤ today, each compared as far as it is known. Where day and month exchanged,
 * or another year, would put a date in its place, that is offered; a gap of more than a year between making and starting is
 * asked about. Occupancy and title transfer have no fixed place: a house may be lived in long before its boiler is changed.
 */
import { Temporal } from 'temporal-polyfill';
import type { DatePrecision } from '../../vocabulary/places.ts';
import type { SuggestionCode } from '../finding.ts';

export type JobDateKind = 'made' | 'sold' | 'installed' | 'started' | 'registered';
export type JobDate<K extends string = JobDateKind> = {
  readonly kind: K;
  readonly on: string;
  readonly precision: DatePrecision;
};

export type DateProblem = {
  readonly code: Extract<SuggestionCode, 'day-month-swapped' | 'wrong-year' | 'date-kinds-confused'>;
  readonly earlier: JobDateKind;
  readonly later: JobDateKind | 'today';
  /** It can't have been so; else only unusual. */
  readonly isImpossible: boolean;
  /** What would put the order right, one change each. */
  readonly meant: readonly { readonly kind: JobDateKind; readonly on: string }[];
};

const ORDER: readonly JobDateKind[] = ['made', 'sold', 'installed', 'started', 'registered'];
/** Boilers stand in a warehouse for months, seldom for more than this. */
const LONGEST_GAP_DAYS = 366;

/** Dates of other kinds, and what is no day, are left aside. */
export function dateOrderProblems(dates: readonly JobDate<string>[], today: string): readonly DateProblem[] {
  const known = inOrder(dates);
  const problems: DateProblem[] = [];
  for (const [index, later] of known.entries()) {
    if (isAfter(later, { on: today, precision: 'day' })) problems.push(explain(later.kind, 'today', known, today));
    for (const earlier of known.slice(0, index)) {
      if (isAfter(earlier, later)) problems.push(explain(earlier.kind, later.kind, known, today));
    }
  }
  return problems.length > 0 ? problems : longGaps(known, today);
}

function inOrder(dates: readonly JobDate<string>[]): readonly JobDate[] {
  return ORDER.flatMap((kind) =>
    dates.flatMap((date) => (date.kind === kind && toDay(date.on) ? [{ ...date, kind }] : [])),
  );
}

/** As far as both are known: March 2026 is not after 4 March 2026. */
function isAfter(one: Pick<JobDate, 'on' | 'precision'>, other: Pick<JobDate, 'on' | 'precision'>): boolean {
  const length = Math.min(KNOWN_LENGTH[one.precision], KNOWN_LENGTH[other.precision]);
  return one.on.slice(0, length) > other.on.slice(0, length);
}

const KNOWN_LENGTH: Readonly<Record<DatePrecision, number>> = { day: 10, month: 7, year: 4 };

function explain(
  earlier: JobDateKind,
  later: JobDateKind | 'today',
  known: readonly JobDate[],
  today: string,
): DateProblem {
  const kinds = later === 'today' ? [earlier] : [earlier, later];
  const swapped = kinds.flatMap((kind) => changed(kind, exchangeDayAndMonth, known, today));
  const shifted = kinds.flatMap((kind) => changed(kind, neighbouringYears, known, today));
  const pair = { earlier, later, isImpossible: true };
  if (swapped.length > 0) return { code: 'day-month-swapped', ...pair, meant: [...swapped, ...shifted] };
  if (shifted.length > 0) return { code: 'wrong-year', ...pair, meant: shifted };
  return { code: 'date-kinds-confused', ...pair, meant: [] };
}

/** Changes of one date that leave no contradiction and no long gap. */
function changed(
  kind: JobDateKind,
  waysOf: (day: Temporal.PlainDate, precision: DatePrecision) => readonly Temporal.PlainDate[],
  known: readonly JobDate[],
  today: string,
): DateProblem['meant'] {
  const date = known.find((one) => one.kind === kind);
  const day = toDay(date?.on ?? '');
  if (date === undefined || day === null) return [];
  return waysOf(day, date.precision)
    .map((way) => ({ kind, on: way.toString() }))
    .filter(({ on }) =>
      isPossible(
        known.map((one) => (one === date ? { ...one, on } : one)),
        today,
      ),
    );
}

function isPossible(known: readonly JobDate[], today: string): boolean {
  const isRising = [...known, { on: today, precision: 'day' } as const].every((one, at, all) =>
    all.slice(0, at).every((earlier) => !isAfter(earlier, one)),
  );
  return isRising && !hasLongGap(known);
}

function longGaps(known: readonly JobDate[], today: string): readonly DateProblem[] {
  if (!hasLongGap(known)) return [];
  const meant = known.flatMap(({ kind }) => changed(kind, neighbouringYears, known, today));
  return [{ code: 'wrong-year', earlier: 'made', later: 'started', isImpossible: false, meant }];
}

/** From the last day that the making can have been. */
function hasLongGap(known: readonly JobDate[]): boolean {
  const made = known.find(({ kind }) => kind === 'made');
  const [from, to] = [toDay(made?.on ?? ''), toDay(known.find(({ kind }) => kind === 'started')?.on ?? '')];
  if (made === undefined || from === null || to === null) return false;
  const latest = from.add({ day: { days: 0 }, month: { months: 1 }, year: { years: 1 } }[made.precision]);
  return latest.until(to, { largestUnit: 'days' }).days > LONGEST_GAP_DAYS;
}

function exchangeDayAndMonth(day: Temporal.PlainDate, precision: DatePrecision): readonly Temporal.PlainDate[] {
  if (precision !== 'day' || day.day > 12 || day.day === day.month) return [];
  return [Temporal.PlainDate.from({ year: day.year, month: day.day, day: day.month })];
}

function neighbouringYears(day: Temporal.PlainDate): readonly Temporal.PlainDate[] {
  return [day.subtract({ years: 1 }), day.add({ years: 1 })];
}

function toDay(text: string): Temporal.PlainDate | null {
  try {
    return Temporal.PlainDate.from(text);
  } catch {
    return null;
  }
}
