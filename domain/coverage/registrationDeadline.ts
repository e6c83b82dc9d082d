/**
 * The last day to register an appliance with its maker, and how that day came about. Checked in
 * tests/domain/coverage/registrationDeadline.test.ts.
 *
 * Rule: the window is counted from the date the sheet names. Without a sheet rule, or when that date is unknown, the
 * earliest known date and the shortest window seen in the trade are taken, and that is said (common practice, no
 * source). Days and months: period.ts.
 */
import type { CoverDate, SheetCover } from '../procedure/modelSheet.ts';
import { type Derivation, derive } from './derivation.ts';
import type { KnownDate } from './knownDate.ts';
import { cautiousDay, daysFromTo, lastDayOf, type Period, weekdayOf } from './period.ts';

export type RegistrationWindow = Period;

/** The same whatever day it is. */
export type RegistrationDue = {
  readonly dueOn: string;
  readonly countedFrom: CoverDate;
  readonly countedFromOn: string;
  readonly precision: KnownDate['precision'];
  readonly window: RegistrationWindow;
  readonly isAssumed: boolean;
};

export type RegistrationDeadline = Omit<RegistrationDue, 'precision'> & {
  /** 1 Monday … 7 Sunday. */
  readonly weekday: number;
  /** Negative when past. */
  readonly daysLeft: number;
};

/** The shortest window seen across makers; common practice, no single source. */
export const SHORTEST_WINDOW: RegistrationWindow = { days: 30 };

/** Dates a window can run from; the day of making never starts one. */
const STARTS: readonly CoverDate[] = ['sold', 'installed', 'started', 'occupied', 'title-transfer'];

/** null: no date is known that a window could run from. */
export function registrationDue(input: {
  readonly cover: SheetCover | null;
  readonly dates: readonly KnownDate[];
}): RegistrationDue | null {
  const rule = input.cover?.registration ?? null;
  let named: KnownDate | undefined;
  let earliest: KnownDate | undefined;
  // Of two on the same day the one that comes first in the life of a boiler.
  for (const kind of STARTS) {
    const date = input.dates.find((one) => one.kind === kind);
    if (date === undefined) continue;
    if (kind === rule?.countedFrom) named = date;
    if (earliest === undefined || cautiousDay(date) < cautiousDay(earliest)) earliest = date;
  }
  const from = named ?? earliest;
  if (from === undefined) return null;
  const window = rule?.window ?? SHORTEST_WINDOW;
  const countedFromOn = cautiousDay(from);
  return {
    dueOn: lastDayOf(countedFromOn, window),
    countedFrom: from.kind,
    countedFromOn,
    precision: from.precision,
    window,
    isAssumed: rule === null || (rule.countedFrom !== 'earliest' && named === undefined),
  };
}

export function registrationDeadline(input: {
  readonly cover: SheetCover | null;
  readonly dates: readonly KnownDate[];
  readonly today: string;
}): RegistrationDeadline | null {
  const due = registrationDue(input);
  if (due === null) return null;
  const { precision: _precision, ...rest } = due;
  return { ...rest, weekday: weekdayOf(due.dueOn), daysLeft: daysFromTo(input.today, due.dueOn) };
}

export function registrationDerivation(cover: SheetCover | null, due: RegistrationDue): Derivation {
  return derive({
    countedFrom: due.countedFrom,
    fromOn: due.countedFromOn,
    precision: due.precision,
    period: due.window,
    assumed: due.isAssumed ? (cover === null ? 'no-rule' : 'named-date-unknown') : null,
  });
}
