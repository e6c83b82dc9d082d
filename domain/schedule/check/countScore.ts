/** The seven goals of a plan, counted by the checker on its own from the times in it. */
import { Temporal } from 'temporal-polyfill';
import { LATE_BASE, type Plan, type Score, UNPLANNED_BASE } from '../plan.ts';
import { isFixed, type PlanningProblem, type PlanVisit } from '../planningProblem.ts';
import { arrivalAfter, closedSpans, freeMinutes } from './freeTime.ts';

export function countScore(problem: PlanningProblem, plan: Pick<Plan, 'routes'>): Score {
  const byId = new Map(problem.visits.map((visit) => [visit.visitId, visit]));
  const placeIndex = new Map(problem.places.map((place, index) => [place.placeId, index]));
  const plannedOn = new Map<string, { readonly date: string; readonly startMin: number }>();
  const plannedIds = new Set(plan.routes.flatMap((route) => route.stops.map((stop) => stop.visitId)));
  const workMin = new Map<string, number>();
  for (const technician of problem.technicians) {
    if (technician.days.some((day) => !day.isAbsent)) workMin.set(technician.technicianId, 0);
  }
  let travelMin = 0;
  let overtimeMin = 0;
  let idleMin = 0;
  for (const route of plan.routes) {
    const technician = problem.technicians.find((one) => one.technicianId === route.technicianId);
    const day = technician?.days.find((one) => one.date === route.date);
    if (technician === undefined || day === undefined || route.stops.length === 0) continue;
    const closed = closedSpans(problem, route.technicianId, route.date, plannedIds);
    const leg = (from: string, to: string): number =>
      problem.travel.minutes[placeIndex.get(from) ?? -1]?.[placeIndex.get(to) ?? -1] ?? Number.NaN;
    let work = 0;
    let at = technician.homePlaceId;
    let leftAtMin: number | null = null;
    for (const stop of route.stops) {
      const visit = byId.get(stop.visitId);
      if (visit === undefined) continue;
      plannedOn.set(stop.visitId, { date: route.date, startMin: stop.startMin });
      const legMin = leg(at, visit.placeId);
      travelMin += legMin;
      work += legMin + visit.durationMin;
      // Who leaves home late does not wait: only time between visits counts as idle.
      if (leftAtMin !== null) idleMin += freeMinutes(closed, leftAtMin, stop.startMin) - legMin;
      leftAtMin = stop.endMin;
      at = visit.placeId;
    }
    const homeMin = leg(at, technician.homePlaceId);
    travelMin += homeMin;
    work += homeMin;
    overtimeMin += Math.max(0, arrivalAfter(closed, leftAtMin ?? day.startMin, homeMin) - day.ordinaryEndMin);
    workMin.set(route.technicianId, (workMin.get(route.technicianId) ?? 0) + work);
  }

  let unplanned = 0;
  let deadlines = 0;
  let daysOutside = 0;
  let promisesMoved = 0;
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
  const loads = [...workMin.values()];
  const imbalance = loads.length === 0 ? 0 : Math.max(...loads) - Math.min(...loads);
  return [unplanned, deadlines, daysOutside, promisesMoved, travelMin, overtimeMin + idleMin, imbalance];
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
