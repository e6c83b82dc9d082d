/** Turns a planning problem into the flat arrays of the search: who may do what, when, and what each choice costs in S2–S4 and W. */
import { daysBetween } from '../dayMinutes.ts';
import { LATE_BASE, type Placement, UNPLANNED_BASE } from '../plan.ts';
import { isFixed, type PlanningProblem, type PlanVisit, type Stay, type Technician } from '../planningProblem.ts';
import { closedSpansOf, findContradictedVisits, type StayOn, staysOf } from './fixedVisits.ts';
import { hasSkill, listOptions, travelBetween, type VisitOption } from './listOptions.ts';
import { penaltyOf, type RoutingModel } from './routingModel.ts';

export type RouteKey = { readonly technicianId: string; readonly date: string };

export type CompiledProblem = {
  readonly problem: PlanningProblem;
  readonly model: RoutingModel;
  readonly routes: readonly RouteKey[];
  readonly visitNumber: ReadonlyMap<string, number>;
  /** Recorded visits that contradict their technician's day: left out, and stays of that day. */
  readonly contradicted: ReadonlySet<string>;
  /** Numbered after the visits. */
  readonly stays: readonly Stay[];
  /** Starts that are kept where the plan leaves room for them. */
  readonly preferred: ReadonlyMap<string, Placement>;
};

export type CompileOptions = {
  /** Where visits are now: moving one of them then counts, a little, within S4. */
  readonly current?: ReadonlyMap<string, Placement>;
  /** Visits the search may move; without it, all that are open. */
  readonly movable?: ReadonlySet<string>;
  /** Where visits are now: one that stays with its technician on its day keeps its start if it can. */
  readonly preferred?: ReadonlyMap<string, Placement>;
  /** Besides those of the problem. */
  readonly stays?: readonly StayOn[];
};

/** A start off the wished grain is avoided for this much more travel. */
export const OFF_GRAIN_TRAVEL_MIN = 15;

/** One broken promise outweighs this many moved visits, when moves count. */
export const MOVES_PER_PROMISE = 64;

export function compileProblem(problem: PlanningProblem, options: CompileOptions = {}): CompiledProblem {
  const { visits, technicians } = problem;
  const visitNumber = new Map(visits.map((visit, index) => [visit.visitId, index]));
  const placeNumber = new Map(problem.places.map((place, index) => [place.placeId, index]));
  const placeOf = (placeId: string): number => {
    const index = placeNumber.get(placeId);
    if (index === undefined) throw new Error(`place ${placeId} is not in the problem`);
    return index;
  };
  const contradicted = findContradictedVisits(problem);
  const days = technicians.flatMap((technician, technicianIndex) =>
    technician.days
      .filter((day) => !day.isAbsent)
      .map((day) => ({
        technician,
        technicianIndex,
        day,
        closed: closedSpansOf(day),
        stays: staysOf(problem, technician, day, contradicted, options.stays),
      })),
  );
  const dates = [...new Set(days.map(({ day }) => day.date))].sort();
  const moveWeight = options.current === undefined ? 1 : MOVES_PER_PROMISE;

  const travel = travelBetween(problem);
  const chosen = visits.map((visit) =>
    contradicted.has(visit.visitId) ? [] : listOptions(travel, visit, days, problem.grainMin),
  );
  const stays = days.flatMap((day, route) => day.stays.map((stay) => ({ ...stay, route })));
  const costed: readonly (readonly CostedOption[])[] = [
    ...visits.map((visit, index) =>
      (chosen[index] ?? []).map((option) => ({ ...option, ...costOf(visit, option, days, problem, options) })),
    ),
    ...stays.map(({ route, fromMin }) => [
      { route, fromMin, toMin: fromMin, grainMin: 1, isOffGrain: false, s2: 0, s3: 0, s4: 0, w: 0 },
    ]),
  ];
  const flat = costed.flat();
  const after = Int32Array.from([
    ...visits.map((visit) =>
      visit.afterVisitId === null || isFixed(visit) ? -1 : (visitNumber.get(visit.afterVisitId) ?? -1),
    ),
    ...stays.map(() => -1),
  ]);
  const dependents = [...visits, ...stays].map((_, index) =>
    visits.flatMap((_other, other) => (after[other] === index ? [other] : [])),
  );
  const dayAfter = daysBetween(problem.firstDate, problem.lastDate) + 1;
  const out = visits.map((visit) => goalsOnDay(visit, dayAfter, problem));
  const withStays = (ofVisits: readonly number[], ofStay: (stay: Stay) => number = () => 0): readonly number[] => [
    ...ofVisits,
    ...stays.map(ofStay),
  ];

  const model: RoutingModel = {
    visitCount: visits.length + stays.length,
    firstStay: visits.length,
    routeCount: days.length,
    placeCount: problem.places.length,
    technicianCount: technicians.length,
    travel: Int32Array.from(problem.travel.minutes.flat()),
    visitPlace: Int32Array.from([...visits, ...stays], (one) => placeOf(one.placeId)),
    duration: Int32Array.from(
      withStays(
        visits.map((visit) => visit.durationMin),
        (stay) => stay.toMin - stay.fromMin,
      ),
    ),
    mayPause: Uint8Array.from(withStays(visits.map((visit) => (visit.mayPause ? 1 : 0)))),
    load: new Int32Array(visits.length + stays.length),
    routeHome: Int32Array.from(days, ({ technician }) => placeOf(technician.homePlaceId)),
    routeStart: Int32Array.from(days, ({ day }) => day.startMin),
    routeEnd: Int32Array.from(days, ({ day }) => day.endMin),
    routeOrdinaryEnd: Int32Array.from(days, ({ day }) => day.ordinaryEndMin),
    routeCapacity: new Int32Array(days.length),
    routeDay: Int32Array.from(days, ({ day }) => dates.indexOf(day.date)),
    routeTechnician: Int32Array.from(days, ({ technicianIndex }) => technicianIndex),
    routeKind: Int32Array.from(days, (_, index) => index),
    breakIndex: offsets(days.map(({ closed }) => closed.length)),
    breakFrom: Int32Array.from(days.flatMap(({ closed }) => closed.map((span) => span.fromMin))),
    breakTo: Int32Array.from(days.flatMap(({ closed }) => closed.map((span) => span.toMin))),
    optionIndex: offsets(costed.map((list) => list.length)),
    optionRoute: Int32Array.from(flat, (option) => option.route),
    optionFrom: Int32Array.from(flat, (option) => option.fromMin),
    optionTo: Int32Array.from(flat, (option) => option.toMin),
    optionGrain: Int32Array.from(flat, (option) => option.grainMin),
    optionOffGrain: Float64Array.from(flat, (option) => (option.isOffGrain ? OFF_GRAIN_TRAVEL_MIN : 0)),
    optionS2: Float64Array.from(flat, (option) => option.s2),
    optionS3: Float64Array.from(flat, (option) => option.s3),
    optionS4: Float64Array.from(flat, (option) => option.s4),
    optionW: Float64Array.from(flat, (option) => option.w),
    optionPenalty: Float64Array.from(
      flat,
      (option) => penaltyOf(option.s2, option.s3, option.s4, option.w) + (option.isOffGrain ? OFF_GRAIN_TRAVEL_MIN : 0),
    ),
    after,
    dependentIndex: offsets(dependents.map((list) => list.length)),
    dependent: Int32Array.from(dependents.flat()),
    pressing: Int32Array.from(withStays(visits.map(pressingOf), () => PRESSING_OF_FIXED)),
    outS1: Float64Array.from(
      withStays(visits.map((visit) => (isFixed(visit) ? 0 : UNPLANNED_BASE ** pressingOf(visit)))),
    ),
    outS2: Float64Array.from(withStays(out.map((goals) => goals.s2))),
    outS3: Float64Array.from(withStays(out.map((goals) => goals.s3))),
    outS4: Float64Array.from(
      withStays(
        visits.map((visit) => {
          if (isFixed(visit)) return 0;
          const isMoved = options.current?.has(visit.visitId) === true;
          return (visit.promised === null ? 0 : moveWeight) + (isMoved ? 1 : 0);
        }),
      ),
    ),
    isMovable: Uint8Array.from(
      withStays(visits.map((visit) => (isFixed(visit) || options.movable?.has(visit.visitId) === false ? 0 : 1))),
    ),
    countsTime: true,
  };
  const routes = days.map(({ technician, day }) => ({ technicianId: technician.technicianId, date: day.date }));
  const preferred = options.preferred ?? options.current ?? new Map<string, Placement>();
  return { problem, model, routes, visitNumber, contradicted, stays, preferred };
}

export function hasPin({ pin }: Pick<PlanVisit, 'pin'>): boolean {
  return pin.technicianId !== null || pin.date !== null || pin.startMin !== null;
}

const PRESSING_OF_FIXED = 5;

function pressingOf(visit: PlanVisit): number {
  if (isFixed(visit)) return PRESSING_OF_FIXED;
  return hasPin(visit) ? 4 : visit.priority;
}

function offsets(counts: readonly number[]): Int32Array {
  const index = new Int32Array(counts.length + 1);
  counts.forEach((count, at) => {
    index[at + 1] = (index[at] as number) + count;
  });
  return index;
}

type Cost = Goals & { readonly s4: number; readonly w: number };

type CostedOption = Omit<VisitOption, 'isAsPromised'> & Cost;

type Goals = { readonly s2: number; readonly s3: number };

function costOf(
  visit: PlanVisit,
  option: VisitOption,
  days: readonly { readonly technician: Technician; readonly day: { readonly date: string } }[],
  problem: PlanningProblem,
  { current }: CompileOptions,
): Cost {
  const route = days[option.route];
  if (route === undefined || isFixed(visit)) return { s2: 0, s3: 0, s4: 0, w: 0 };
  const { date } = route.day;
  const goals = goalsOnDay(visit, daysBetween(problem.firstDate, date), problem);
  const w = visit.wishes.filter((code) => !hasSkill(route.technician, code, date)).length;
  const breaksPromise = visit.promised !== null && !option.isAsPromised ? 1 : 0;
  if (current === undefined) return { ...goals, s4: breaksPromise, w };
  const now = current.get(visit.visitId);
  const isMoved = now !== undefined && (now.date !== date || now.technicianId !== route.technician.technicianId);
  return { ...goals, s4: breaksPromise * MOVES_PER_PROMISE + (isMoved ? 1 : 0), w };
}

/** S2 and S3 of a visit done so many days after the first of the range. */
function goalsOnDay(visit: PlanVisit, day: number, problem: PlanningProblem): Goals {
  if (isFixed(visit)) return { s2: 0, s3: 0 };
  const { firstDate } = problem;
  let s2 = 0;
  if (visit.deadline !== null && visit.deadlineKind !== 'none') {
    const spare = daysBetween(firstDate, visit.deadline) - day;
    s2 = spare < 0 ? -spare * LATE_BASE : Math.max(0, problem.safetyMarginDays - spare);
  }
  const early = visit.dueFrom === null ? 0 : Math.max(0, daysBetween(firstDate, visit.dueFrom) - day);
  const late = visit.dueTo === null ? 0 : Math.max(0, day - daysBetween(firstDate, visit.dueTo));
  return { s2, s3: early + late };
}
