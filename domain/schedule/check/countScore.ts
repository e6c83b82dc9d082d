/** The goals of a plan, counted by the checker on its own from the times in it. */
import { Temporal } from 'temporal-polyfill';
import { LATE_BASE, type Plan, type Score, UNPLANNED_BASE } from '../plan.ts';
import { isFixed, type PlanningProblem, type PlanVisit } from '../planningProblem.ts';
import { dayPoints, stayPoints } from './dayPoints.ts';
import { arrivalAfter, closedSpans, freeMinutes } from './freeTime.ts';

export function countScore(problem: PlanningProblem, plan: Pick<Plan, 'routes'>): Score {
  const byId = new Map(problem.visits.map((visit) => [visit.visitId, visit]));
  const plannedOn = new Map(
    plan.routes.flatMap(({ date, stops }) => stops.map((stop) => [stop.visitId, { date, startMin: stop.startMin }])),
  );
  const { travelMin, overtimeMin, idleMin, workMin } = countDays(problem, plan, byId);

  let unplanned = 0;
  let deadlines = 0;
  let daysOutside = 0;
  let promisesMoved = 0;
  let wishesLacking = 0;
  const dayAfterRange = Temporal.PlainDate.from(problem.lastDate).add({ days: 1 }).toString();
  for (const visit of problem.visits) {
    if (isFixed(visit)) continue;
    const placed = plannedOn.get(visit.visitId);
    if (placed === undefined) unplanned += UNPLANNED_BASE ** pressingClass(visit);
    const date = placed?.date ?? dayAfterRange;
    deadlines += deadlineKey(visit, date, problem.safetyMarginDays);
    if (visit.dueFrom !== null) daysOutside += Math.max(0, days(date, visit.dueFrom));
    if (visit.dueTo !== null) daysOutside += Math.max(0, days(visit.dueTo, date));
    const { promised } = visit;
    if (
      promised !== null &&
      (placed === undefined ||
        placed.date !== promised.date ||
        placed.startMin < promised.fromMin ||
        placed.startMin > promised.toMin)
    )
      promisesMoved += 1;
  }
  for (const { technicianId, date, stops } of plan.routes) {
    const skills = problem.technicians.find((one) => one.technicianId === technicianId)?.skills ?? [];
    const has = (code: string): boolean =>
      skills.some(
        (one) => one.code === code && (one.validFrom ?? date) <= date && (one.validTo === null || one.validTo >= date),
      );
    for (const { visitId } of stops) {
      const visit = byId.get(visitId);
      if (visit !== undefined && !isFixed(visit)) wishesLacking += visit.wishes.filter((code) => !has(code)).length;
    }
  }
  const loads = [...workMin.values()];
  const imbalance = loads.length === 0 ? 0 : Math.max(...loads) - Math.min(...loads);
  return [unplanned, deadlines, daysOutside, promisesMoved, wishesLacking, travelMin, overtimeMin + idleMin, imbalance];
}

function countDays(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes'>,
  byId: ReadonlyMap<string, PlanVisit>,
): {
  readonly travelMin: number;
  readonly overtimeMin: number;
  readonly idleMin: number;
  readonly workMin: ReadonlyMap<string, number>;
} {
  const placeIndex = new Map(problem.places.map((place, index) => [place.placeId, index]));
  const plannedIds = new Set(plan.routes.flatMap((route) => route.stops.map((stop) => stop.visitId)));
  const leg = (from: string, to: string): number =>
    problem.travel.minutes[placeIndex.get(from) ?? -1]?.[placeIndex.get(to) ?? -1] ?? Number.NaN;
  const workMin = new Map<string, number>();
  let travelMin = 0;
  let overtimeMin = 0;
  let idleMin = 0;
  for (const { technicianId, homePlaceId, days } of problem.technicians) {
    for (const day of days) {
      if (day.isAbsent) continue;
      const stops = plan.routes.find((one) => one.technicianId === technicianId && one.date === day.date)?.stops ?? [];
      const stays = stayPoints(problem, technicianId, day, plannedIds);
      const points = dayPoints(stays, stops, (visitId) => byId.get(visitId)?.placeId ?? '');
      const closed = closedSpans(day);
      let work = 0;
      let at = homePlaceId;
      let leftAtMin: number | null = null;
      for (const point of points) {
        const legMin = leg(at, point.placeId);
        travelMin += legMin;
        work += legMin + (byId.get(point.stop?.visitId ?? '')?.durationMin ?? point.toMin - point.fromMin);
        // Who leaves home late does not wait: only time between visits counts as idle.
        if (leftAtMin !== null) idleMin += Math.max(0, freeMinutes(closed, leftAtMin, point.fromMin) - legMin);
        leftAtMin = Math.max(leftAtMin ?? day.startMin, point.toMin);
        at = point.placeId;
      }
      if (leftAtMin !== null) {
        const homeMin = leg(at, homePlaceId);
        travelMin += homeMin;
        work += homeMin;
        overtimeMin += Math.max(0, arrivalAfter(closed, leftAtMin, homeMin) - day.ordinaryEndMin);
      }
      workMin.set(technicianId, (workMin.get(technicianId) ?? 0) + work);
    }
  }
  return { travelMin, overtimeMin, idleMin, workMin };
}

function pressingClass({ pin, priority }: PlanVisit): number {
  const isPinned = pin.technicianId !== null || pin.date !== null || pin.startMin !== null;
  return isPinned ? 4 : priority;
}

function deadlineKey(visit: PlanVisit, date: string, safetyMarginDays: number): number {
  if (visit.deadline === null || visit.deadlineKind === 'none') return 0;
  const spare = days(date, visit.deadline);
  return spare < 0 ? -spare * LATE_BASE : Math.max(0, safetyMarginDays - spare);
}

function days(from: string, to: string): number {
  return Temporal.PlainDate.from(from).until(to, { largestUnit: 'day' }).days;
}
