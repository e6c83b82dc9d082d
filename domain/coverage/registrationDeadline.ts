/**
 * The last day to register an appliance with its maker, and how that day came about. Checked in
 * tests/domain/coverage/registrationDeadline.test.ts.
 *
 * Rule: the window is counted from the date the sheet names. Without a sheet rule, or when that date is unknown, the
 * earliest known date and the shortest window seen in the trade are taken, and that is said (startup practice, common
 * practice: "if unknown use the earliest date and the shortest window and say so").
 * Months: the same day of the month n months later; a day that month lacks becomes its last day.
 * Days: day 0 is the date itself, so 30 days from 14 October is 13 November.
 */
import { Temporal } from 'temporal-polyfill';
import type { CoverDate, SheetCover } from '../procedure/modelSheet.ts';
import type { KnownDate } from './dateOrder.ts';

export type RegistrationWindow = { readonly days: number } | { readonly months: number };

export type RegistrationDeadline = {
  readonly dueOn: string;
  /** 1 Monday … 7 Sunday. */
  readonly weekday: number;
  /** Negative when past. */
  readonly daysLeft: number;
  readonly countedFrom: CoverDate;
  readonly countedFromOn: string;
  readonly window: RegistrationWindow;
  readonly isAssumed: boolean;
};

/** The shortest window seen across makers; common practice, no single source. */
export const SHORTEST_WINDOW: RegistrationWindow = { days: 30 };

/** Dates a window can run from; the day of making never starts one. */
const STARTS: readonly CoverDate[] = ['sold', 'installed', 'started', 'occupied', 'title-transfer'];

/** null: no date is known that a window could run from. */
export function registrationDeadline(input: {
  readonly cover: SheetCover | null;
  readonly dates: readonly KnownDate[];
  readonly today: string;
}): RegistrationDeadline | null {
  const rule = input.cover?.registration ?? null;
  const known = input.dates.filter((date) => STARTS.includes(date.kind)).sort((a, b) => a.on.localeCompare(b.on));
  const named =
    rule === null || rule.countedFrom === 'earliest' ? undefined : known.find((date) => date.kind === rule.countedFrom);
  const from = named ?? known[0];
  if (from === undefined) return null;
  const window = rule?.window ?? SHORTEST_WINDOW;
  // Known only to the month or year: counted from its first day, the cautious end.
  const start = firstDayOf(from);
  const due =
    'days' in window
      ? start.add({ days: window.days })
      : start.add({ months: window.months }, { overflow: 'constrain' });
  return {
    dueOn: due.toString(),
    weekday: due.dayOfWeek,
    daysLeft: Temporal.PlainDate.from(input.today).until(due, { largestUnit: 'days' }).days,
    countedFrom: from.kind,
    countedFromOn: start.toString(),
    window,
    isAssumed: rule === null || (rule.countedFrom !== 'earliest' && named === undefined),
  };
}

function firstDayOf(date: KnownDate): Temporal.PlainDate {
  const on = Temporal.PlainDate.from(date.on);
  if (date.precision === 'year') return on.with({ month: 1, day: 1 });
  return date.precision === 'month' ? on.with({ day: 1 }) : on;
}
