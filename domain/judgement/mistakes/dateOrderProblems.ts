/**
 * Made ≤ sold ≤ installed ≤ started ≤ registered ≤ today. Where day and month exchanged, or another year,
 * would put a date in its place, that is offered; a gap of more than a year between making and starting is asked about.
 */
import { Temporal } from 'temporal-polyfill';
import type { SuggestionCode } from '../finding.ts';

export type JobDateKind = 'made' | 'sold' | 'installed' | 'started' | 'registered';
export type JobDates = Readonly<Partial<Record<JobDateKind, string>>>;

export type DateProblem = {
  readonly code: Extract<SuggestionCode, 'day-month-swapped' | 'wrong-year' | 'date-kinds-confused'>;
  readonly earlier: JobDateKind;
  readonly later: JobDateKind | 'today';
  /** What would put the order right, one change each. */
  readonly meant: readonly { readonly kind: JobDateKind; readonly on: string }[];
};

const ORDER: readonly JobDateKind[] = ['made', 'sold', 'installed', 'started', 'registered'];
/** Boilers stand in a warehouse for months, seldom for more than this. */
const LONGEST_GAP_DAYS = 366;

export function dateOrderProblems(dates: JobDates, today: string): readonly DateProblem[] {
  const known = ORDER.flatMap((kind) => {
    const on = dates[kind];
    return on === undefined || toDay(on) === null ? [] : [{ kind, on }];
  });
  const problems: DateProblem[] = [];
  for (const [index, later] of known.entries()) {
    if (later.on > today) problems.push(explain(later.kind, 'today', dates, today));
    for (const earlier of known.slice(0, index)) {
      if (earlier.on > later.on) problems.push(explain(earlier.kind, later.kind, dates, today));
    }
  }
  if (problems.length === 0) problems.push(...longGaps(known, dates, today));
  return problems;
}

function explain(earlier: JobDateKind, later: JobDateKind | 'today', dates: JobDates, today: string): DateProblem {
  const kinds = later === 'today' ? [earlier] : [earlier, later];
  const swapped = kinds.flatMap((kind) => changed(kind, exchangeDayAndMonth, dates, today));
  const shifted = kinds.flatMap((kind) => changed(kind, neighbouringYears, dates, today));
  if (swapped.length > 0) return { code: 'day-month-swapped', earlier, later, meant: [...swapped, ...shifted] };
  if (shifted.length > 0) return { code: 'wrong-year', earlier, later, meant: shifted };
  return { code: 'date-kinds-confused', earlier, later, meant: [] };
}

/** Changes of one date that leave no contradiction and no long gap. */
function changed(
  kind: JobDateKind,
  waysOf: (day: Temporal.PlainDate) => readonly Temporal.PlainDate[],
  dates: JobDates,
  today: string,
): readonly { readonly kind: JobDateKind; readonly on: string }[] {
  const day = toDay(dates[kind] ?? '');
  if (day === null) return [];
  return waysOf(day)
    .map((way) => ({ kind, on: way.toString() }))
    .filter(({ on }) => isInOrder({ ...dates, [kind]: on }, today));
}

function isInOrder(dates: JobDates, today: string): boolean {
  const known = ORDER.flatMap((kind) => dates[kind] ?? []);
  const isRising = [...known, today].every((on, at, all) => at === 0 || (all[at - 1] ?? '') <= on);
  return isRising && !hasLongGap(dates);
}

function longGaps(
  known: readonly { readonly kind: JobDateKind; readonly on: string }[],
  dates: JobDates,
  today: string,
): readonly DateProblem[] {
  const [first] = known;
  if (first === undefined || first.kind !== 'made' || !hasLongGap(dates)) return [];
  const shifted = known.flatMap(({ kind }) => changed(kind, neighbouringYears, dates, today));
  return [{ code: 'wrong-year', earlier: 'made', later: 'started', meant: shifted }];
}

function hasLongGap({ made, started }: JobDates): boolean {
  const [from, to] = [toDay(made ?? ''), toDay(started ?? '')];
  return from !== null && to !== null && from.until(to, { largestUnit: 'days' }).days > LONGEST_GAP_DAYS;
}

function exchangeDayAndMonth(day: Temporal.PlainDate): readonly Temporal.PlainDate[] {
  if (day.day > 12 || day.day === day.month) return [];
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
