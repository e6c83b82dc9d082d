/** One person's day as a round of stops: the way between them, and what does not fit, each as a fact with its numbers. */
import type { AgedAnswer } from '../procedure/agedReadiness.ts';
import type { FuelKey } from '../procedure/modelSheet.ts';
import { findObstacles, isForbidding, type Obstacle, type Work, type Worker } from './obstacles.ts';
import { type TravelTimes, wayMinutes } from './wayMinutes.ts';
import type { WayPlace } from './wayPlace.ts';
import { hoursOn } from './workSpans.ts';

export type Stop = {
  readonly visitId: string;
  readonly on: string;
  /** null: some time that day. */
  readonly startMin: number | null;
  readonly durationMin: number;
  readonly place: WayPlace;
  /** Begun or finished ones take up time but are past judging. */
  readonly isAhead: boolean;
  readonly isPencilled: boolean;
  /** The promised window of arrival, minutes from midnight, and the day that was told. */
  readonly promisedFromMin: number | null;
  readonly promisedToMin: number | null;
  readonly promisedOn: string | null;
  readonly jobs: readonly (Work & {
    readonly fuel: FuelKey | null;
    readonly latestOn: string | null;
    readonly latestWhy: string | null;
    readonly wantedFromOn: string | null;
    readonly wantedToOn: string | null;
    readonly openReadiness: readonly string[];
    readonly agedReadiness: readonly AgedAnswer[];
    /** Finished on another visit. */
    readonly isDone: boolean;
  })[];
};

/** On the way to `toVisitId`, or home when it is null. `minutes` null: neither map nor table knows the way. */
export type Leg = {
  readonly fromVisitId: string | null;
  readonly toVisitId: string | null;
  readonly leaveMin: number;
  readonly minutes: number | null;
};

export type Conflict =
  | { readonly code: 'obstacle'; readonly obstacle: Obstacle }
  | { readonly code: 'overlap'; readonly otherVisitId: string }
  | {
      readonly code: 'travel-too-short';
      readonly fromVisitId: string;
      readonly needMin: number;
      readonly haveMin: number;
    }
  | { readonly code: 'sets-out-early'; readonly leaveMin: number; readonly hoursFromMin: number }
  | { readonly code: 'home-late'; readonly homeMin: number; readonly hoursToMin: number }
  | { readonly code: 'outside-promise'; readonly promisedFromMin: number | null; readonly promisedToMin: number | null }
  | { readonly code: 'day-not-promised'; readonly promisedOn: string }
  | { readonly code: 'after-latest'; readonly latestOn: string; readonly why: string | null }
  | { readonly code: 'outside-wanted'; readonly wantedFromOn: string | null; readonly wantedToOn: string | null }
  | { readonly code: 'readiness-open'; readonly items: readonly string[] }
  /** All of it was finished on another visit: nobody has to go any more. */
  | { readonly code: 'work-done' }
  /** Given, but so long ago that it has to be asked again. */
  | { readonly code: 'readiness-old'; readonly answers: readonly AgedAnswer[] };

export type DayPlan = {
  readonly legs: readonly Leg[];
  readonly conflicts: ReadonlyMap<string, readonly Conflict[]>;
};

export type Traveller = { readonly worker: Worker; readonly base: WayPlace };

/** `isHelping`: somebody else on that visit holds the licence, so that of this person is not asked for. */
export function planDay(
  on: string,
  { worker, base }: Traveller,
  stops: readonly Stop[],
  travel: TravelTimes,
  isHelping: (visitId: string) => boolean = () => false,
): DayPlan {
  const timed = stops.filter(isTimed).toSorted((a, b) => a.startMin - b.startMin);
  const legs = legsOf(timed, base, travel);
  const conflicts = new Map<string, Conflict[]>();
  for (const stop of stops) {
    if (!stop.isAhead) continue;
    const found = [...ownConflicts(stop), ...personConflicts(stop, worker, isHelping(stop.visitId))];
    if (isTimed(stop)) found.push(...roundConflicts(on, stop, timed, legs, worker));
    if (found.length > 0) conflicts.set(stop.visitId, found);
  }
  return { legs, conflicts };
}

/** What must be changed, as against what is to be weighed. */
export function isGrave(conflict: Conflict): boolean {
  return conflict.code === 'obstacle'
    ? isForbidding(conflict.obstacle)
    : conflict.code === 'overlap' ||
        conflict.code === 'work-done' ||
        conflict.code === 'after-latest' ||
        conflict.code === 'readiness-open';
}

type TimedStop = Stop & { readonly startMin: number };

function isTimed(stop: Stop): stop is TimedStop {
  return stop.startMin !== null;
}

function legsOf(timed: readonly TimedStop[], base: WayPlace, travel: TravelTimes): readonly Leg[] {
  const legs: Leg[] = [];
  let from: { readonly visitId: string | null; readonly place: WayPlace } = { visitId: null, place: base };
  for (const stop of timed) {
    const minutes = wayMinutes(from.place, stop.place, travel);
    legs.push({
      fromVisitId: from.visitId,
      toVisitId: stop.visitId,
      leaveMin: stop.startMin - (minutes ?? 0),
      minutes,
    });
    from = stop;
  }
  const last = timed.at(-1);
  if (last !== undefined)
    legs.push({
      fromVisitId: last.visitId,
      toVisitId: null,
      leaveMin: last.startMin + last.durationMin,
      minutes: wayMinutes(last.place, base, travel),
    });
  return legs;
}

function ownConflicts(stop: Stop): readonly Conflict[] {
  if (stop.jobs.length > 0 && stop.jobs.every(({ isDone }) => isDone)) return [{ code: 'work-done' }];
  const found: Conflict[] = [];
  const { promisedFromMin, promisedToMin, startMin } = stop;
  if (stop.promisedOn !== null && stop.promisedOn !== stop.on)
    found.push({ code: 'day-not-promised', promisedOn: stop.promisedOn });
  if (
    startMin !== null &&
    ((promisedFromMin !== null && startMin < promisedFromMin) || (promisedToMin !== null && startMin > promisedToMin))
  )
    found.push({ code: 'outside-promise', promisedFromMin, promisedToMin });
  for (const { latestOn, latestWhy, wantedFromOn, wantedToOn } of stop.jobs) {
    if (latestOn !== null && stop.on > latestOn) found.push({ code: 'after-latest', latestOn, why: latestWhy });
    if ((wantedFromOn !== null && stop.on < wantedFromOn) || (wantedToOn !== null && stop.on > wantedToOn))
      found.push({ code: 'outside-wanted', wantedFromOn, wantedToOn });
  }
  const items = stop.jobs.flatMap((job) => job.openReadiness);
  if (!stop.isPencilled && items.length > 0) found.push({ code: 'readiness-open', items });
  const answers = stop.jobs.flatMap((job) => job.agedReadiness);
  if (answers.length > 0) found.push({ code: 'readiness-old', answers });
  return found;
}

function personConflicts(stop: Stop, worker: Worker, isHelping: boolean): readonly Conflict[] {
  const when = { on: stop.on, fromMin: stop.startMin, durationMin: stop.durationMin };
  return findObstacles(worker, isHelping ? [] : stop.jobs, when).map((obstacle) => ({ code: 'obstacle', obstacle }));
}

function roundConflicts(
  on: string,
  stop: TimedStop,
  timed: readonly TimedStop[],
  legs: readonly Leg[],
  worker: Worker,
): readonly Conflict[] {
  const found: Conflict[] = [];
  const endMin = stop.startMin + stop.durationMin;
  const other = timed.find(
    (one) => one !== stop && one.startMin < endMin && stop.startMin < one.startMin + one.durationMin,
  );
  if (other !== undefined) found.push({ code: 'overlap', otherVisitId: other.visitId });
  const hours = hoursOn(worker.hours, on);
  const coming = legs.find((leg) => leg.toVisitId === stop.visitId);
  const before = timed.find((one) => one.visitId === coming?.fromVisitId);
  if (coming !== undefined && coming.minutes !== null) {
    if (before === undefined) {
      if (hours !== undefined && stop.startMin >= hours.fromMin && coming.leaveMin < hours.fromMin)
        found.push({ code: 'sets-out-early', leaveMin: coming.leaveMin, hoursFromMin: hours.fromMin });
    } else {
      const haveMin = stop.startMin - before.startMin - before.durationMin;
      if (haveMin >= 0 && haveMin < coming.minutes)
        found.push({ code: 'travel-too-short', fromVisitId: before.visitId, needMin: coming.minutes, haveMin });
    }
  }
  const home = legs.find((leg) => leg.fromVisitId === stop.visitId && leg.toVisitId === null);
  if (home !== undefined && home.minutes !== null && hours !== undefined) {
    const homeMin = home.leaveMin + home.minutes;
    if (endMin <= hours.toMin && homeMin > hours.toMin)
      found.push({ code: 'home-late', homeMin, hoursToMin: hours.toMin });
  }
  return found;
}
