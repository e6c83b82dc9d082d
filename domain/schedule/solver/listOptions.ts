/** Where a visit may go: each technician's day that has no obstacle, with the minutes it may start between. */
import {
  isFixed,
  type PlanningProblem,
  type PlanVisit,
  type Stay,
  type Technician,
  type TimeSpan,
  type WorkDay,
} from '../planningProblem.ts';
import { onGrainFrom } from '../startGrain.ts';
import type { DayObstacle } from '../unplannedReason.ts';
import { endOfWork } from './endOfWork.ts';

export type VisitOption = {
  readonly route: number;
  readonly fromMin: number;
  readonly toMin: number;
  /** Starts only on whole multiples of this many minutes. */
  readonly grainMin: number;
  /** To the minute, where the option before it is the same on the wished grain. */
  readonly isOffGrain: boolean;
  /** Every start in it keeps what the customer was told. */
  readonly isAsPromised: boolean;
};

export type TechnicianDay = {
  readonly technician: Technician;
  readonly day: WorkDay;
  /** In order, without overlap. */
  readonly closed: readonly TimeSpan[];
  /** In order. */
  readonly stays: readonly Stay[];
};

/** Minutes of travel by the ids of two places. */
export type TravelBetween = (fromPlaceId: string, toPlaceId: string) => number;

export function travelBetween(problem: Pick<PlanningProblem, 'places' | 'travel'>): TravelBetween {
  const number = new Map(problem.places.map((place, index) => [place.placeId, index]));
  return (from, to) =>
    problem.travel.minutes[number.get(from) ?? -1]?.[number.get(to) ?? -1] ?? Number.POSITIVE_INFINITY;
}

export function listOptions(
  travel: TravelBetween,
  visit: PlanVisit,
  days: readonly TechnicianDay[],
  grainMin: number,
): readonly VisitOption[] {
  const { pin } = visit;
  return days.flatMap((one, route) => {
    if (pin.technicianId !== null && pin.technicianId !== one.technician.technicianId) return [];
    if (pin.date !== null && pin.date !== one.day.date) return [];
    if (isFixed(visit)) {
      const start = pin.startMin ?? 0;
      return [{ route, fromMin: start, toMin: start, grainMin: 1, isOffGrain: false, isAsPromised: true }];
    }
    if (findDayObstacle(travel, visit, one) !== null) return [];
    return startSpans(visit, one.day).flatMap((span) =>
      splitByPromise(visit, one.day.date, span).flatMap((part) =>
        withGrain(part, grainMin).map((option) => ({ route, ...option })),
      ),
    );
  });
}

/** What keeps this technician from this visit on this day, even with nothing else planned; null: nothing. */
export function findDayObstacle(
  travel: TravelBetween,
  visit: PlanVisit,
  { technician, day, closed, stays }: TechnicianDay,
): DayObstacle | null {
  if (day.isAbsent) return { code: 'absent' };
  for (const skill of visit.needs) {
    if (hasSkill(technician, skill, day.date)) continue;
    const held = technician.skills.filter((one) => one.code === skill);
    const [first] = held;
    return first === undefined
      ? { code: 'skill-missing', skill }
      : { code: 'skill-not-valid', skill, validTo: first.validTo };
  }
  const windows = visit.windows?.filter((window) => window.date === day.date) ?? null;
  if (windows?.length === 0) return { code: 'no-window-that-day' };
  const { startMin } = visit.pin;
  if (
    startMin !== null &&
    windows !== null &&
    !windows.some((window) => window.fromMin <= startMin && startMin <= window.toMin)
  )
    return { code: 'pinned-start-outside-windows' };
  const spans = startSpans(visit, day);
  const gaps = gapsOf(technician, day, stays);
  return gaps.some((gap) => spans.some((span) => fitsAlone(travel, visit, gap, closed, span)))
    ? null
    : { code: 'window-outside-hours' };
}

export function hasSkill({ skills }: Pick<Technician, 'skills'>, code: string, date: string): boolean {
  return skills.some(
    (one) =>
      one.code === code &&
      (one.validFrom === null || one.validFrom <= date) &&
      (one.validTo === null || date <= one.validTo),
  );
}

/** The minutes at which it may start that day: promised windows and pin within the hours. */
function startSpans(visit: PlanVisit, day: WorkDay): readonly TimeSpan[] {
  const windows = visit.windows?.filter((window) => window.date === day.date) ?? [
    { fromMin: day.startMin, toMin: day.endMin },
  ];
  const { startMin } = visit.pin;
  return windows
    .map((window) => ({
      fromMin: Math.max(window.fromMin, day.startMin, startMin ?? window.fromMin),
      toMin: Math.min(window.toMin, day.endMin - visit.durationMin, startMin ?? window.toMin),
    }))
    .filter((span) => span.fromMin <= span.toMin);
}

/** From leaving one place to being at the next: home and home again, and the stays between. */
type Gap = {
  readonly fromPlaceId: string;
  readonly fromMin: number;
  readonly toPlaceId: string;
  readonly toMin: number;
};

function gapsOf({ homePlaceId }: Technician, day: WorkDay, stays: readonly Stay[]): readonly Gap[] {
  const gaps: Gap[] = [];
  let [fromPlaceId, fromMin] = [homePlaceId, day.startMin];
  for (const stay of stays) {
    gaps.push({ fromPlaceId, fromMin, toPlaceId: stay.placeId, toMin: stay.fromMin });
    fromPlaceId = stay.placeId;
    fromMin = Math.max(fromMin, stay.toMin);
  }
  return [...gaps, { fromPlaceId, fromMin, toPlaceId: homePlaceId, toMin: day.endMin }];
}

function fitsAlone(
  travel: TravelBetween,
  visit: PlanVisit,
  gap: Gap,
  closed: readonly TimeSpan[],
  span: TimeSpan,
): boolean {
  const outMin = travel(gap.fromPlaceId, visit.placeId);
  const onMin = travel(visit.placeId, gap.toPlaceId);
  const open = (from: number, to: number): number =>
    closed.reduce((sum, one) => sum - Math.max(0, Math.min(one.toMin, to) - Math.max(one.fromMin, from)), to - from);
  // A start at which the work can go on is followed by others until the next closed span: one per span has to be tried.
  let reached = gap.fromMin + outMin;
  while (reached <= span.toMin && open(gap.fromMin, reached) < outMin) reached += 1;
  return [span.fromMin, reached, ...closed.map((one) => one.toMin)].some((from) => {
    const at = Math.max(from, reached);
    if (at < span.fromMin || at > span.toMin) return false;
    const over = endOfWork(closed, at, visit);
    return over !== null && over <= gap.toMin && open(over, gap.toMin) >= onMin;
  });
}

/** On the grain if any start is, and to the minute for where neighbours leave no such start. */
function withGrain<T extends TimeSpan>(
  part: T,
  grainMin: number,
): readonly (T & Pick<VisitOption, 'grainMin' | 'isOffGrain'>)[] {
  const toTheMinute = { ...part, grainMin: 1, isOffGrain: false };
  if (grainMin <= 1 || onGrainFrom(part.fromMin, grainMin) > part.toMin) return [toTheMinute];
  const onGrain = { ...part, grainMin, isOffGrain: false };
  return part.fromMin === part.toMin ? [onGrain] : [onGrain, { ...toTheMinute, isOffGrain: true }];
}

function splitByPromise(
  visit: PlanVisit,
  date: string,
  span: TimeSpan,
): readonly (TimeSpan & { isAsPromised: boolean })[] {
  const { promised } = visit;
  if (promised === null) return [{ ...span, isAsPromised: true }];
  if (promised.date !== date) return [{ ...span, isAsPromised: false }];
  return [
    {
      fromMin: Math.max(span.fromMin, promised.fromMin),
      toMin: Math.min(span.toMin, promised.toMin),
      isAsPromised: true,
    },
    { fromMin: span.fromMin, toMin: Math.min(span.toMin, promised.fromMin - 1), isAsPromised: false },
    { fromMin: Math.max(span.fromMin, promised.toMin + 1), toMin: span.toMin, isAsPromised: false },
  ].filter((part) => part.fromMin <= part.toMin);
}
