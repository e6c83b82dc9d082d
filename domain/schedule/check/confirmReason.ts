/** Whether what a plan says of a visit it left out is true: every technician-day and every gap is tried by hand. */
import type { Plan, Stop } from '../plan.ts';
import { isFixed, type PlanningProblem, type PlanVisit, type Technician, type WorkDay } from '../planningProblem.ts';
import type { UnplannedReason } from '../unplannedReason.ts';
import { checkRoutes } from './checkRoutes.ts';
import { stayPoints } from './dayPoints.ts';
import { closedSpans, finishOf, freeMinutes } from './freeTime.ts';

export function confirmReason(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes' | 'unplanned'>,
  visitId: string,
  reason: UnplannedReason,
): boolean {
  const visit = problem.visits.find((one) => one.visitId === visitId);
  if (visit === undefined) return false;
  switch (reason.code) {
    case 'pin-unknown':
      return reason.field === 'technician'
        ? !problem.technicians.some((one) => one.technicianId === visit.pin.technicianId)
        : visit.pin.date !== null &&
            !problem.technicians.some((one) => one.days.some((day) => day.date === visit.pin.date));
    case 'nobody-can':
      return !couldTakeOnItsOwn(problem, plan, visit);
    case 'earlier-visit-not-planned':
      return visit.afterVisitId === reason.afterVisitId && findStop(plan, reason.afterVisitId) === null;
    case 'no-gap':
      return !hasGap(problem, plan, visit, true) && couldTakeOnItsOwn(problem, plan, visit);
    case 'pin-clash':
      return (
        isPinned(visit) &&
        reason.withVisitIds.length > 0 &&
        reason.withVisitIds.every((id) => findStop(plan, id) !== null) &&
        !hasGap(problem, plan, visit, true)
      );
    case 'fixed-does-not-fit':
      return isFixed(visit) && isContradicted(problem, visit);
  }
}

function isPinned({ pin }: PlanVisit): boolean {
  return pin.technicianId !== null || pin.date !== null || pin.startMin !== null;
}

function findStop(plan: Pick<Plan, 'routes'>, visitId: string): { readonly date: string; readonly stop: Stop } | null {
  for (const route of plan.routes) {
    const stop = route.stops.find((one) => one.visitId === visitId);
    if (stop !== undefined) return { date: route.date, stop };
  }
  return null;
}

/** Is there any place in the plan, every other visit staying at its minute, where this one would keep every rule? */
function hasGap(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes'>,
  visit: PlanVisit,
  mindsEarlierVisit: boolean,
): boolean {
  const earlier =
    mindsEarlierVisit && visit.afterVisitId !== null && !isFixed(visit)
      ? findStop(plan, visit.afterVisitId)
      : undefined;
  if (earlier === null) return false;
  const planned = plannedIdsOf(plan, visit);
  return problem.technicians.some((technician) =>
    technician.days.some((day) => {
      if (!mayTake(visit, technician, day)) return false;
      if (earlier !== undefined && day.date < earlier.date) return false;
      const notBeforeMin = earlier !== undefined && day.date === earlier.date ? earlier.stop.endMin : 0;
      return dayHasGap(problem, plan, visit, technician, day, planned, notBeforeMin);
    }),
  );
}

/** Recorded visits of one technician's day that can't all have been as they are recorded. */
function isContradicted(problem: PlanningProblem, visit: PlanVisit): boolean {
  const { technicianId, date, startMin } = visit.pin;
  if (technicianId === null || date === null || startMin === null) return true;
  const visits = problem.visits.filter(
    (one) => isFixed(one) && one.pin.technicianId === technicianId && one.pin.date === date,
  );
  const technician = problem.technicians.find((one) => one.technicianId === technicianId);
  const breaks = closedSpans(technician?.days.find((one) => one.date === date));
  const stops = visits
    .map((one): Stop => {
      const start = one.pin.startMin ?? Number.NaN;
      const endMin = finishOf(breaks, start, one) ?? start + one.durationMin;
      return { visitId: one.visitId, arriveMin: start, startMin: start, endMin };
    })
    .sort((a, b) => a.startMin - b.startMin || a.visitId.localeCompare(b.visitId));
  return checkRoutes({ ...problem, visits }, { routes: [{ technicianId, date, stops }] }).length > 0;
}

/** Were there room if nothing else was planned? */
function couldTakeOnItsOwn(problem: PlanningProblem, plan: Pick<Plan, 'routes'>, visit: PlanVisit): boolean {
  const planned = plannedIdsOf(plan, visit);
  return problem.technicians.some((technician) =>
    technician.days.some(
      (day) =>
        mayTake(visit, technician, day) && dayHasGap(problem, { routes: [] }, visit, technician, day, planned, 0),
    ),
  );
}

function plannedIdsOf(plan: Pick<Plan, 'routes'>, visit: PlanVisit): ReadonlySet<string> {
  return new Set([visit.visitId, ...plan.routes.flatMap((route) => route.stops.map((stop) => stop.visitId))]);
}

function mayTake(visit: PlanVisit, technician: Technician, day: WorkDay): boolean {
  const { pin, needs } = visit;
  if (day.isAbsent || (pin.date !== null && pin.date !== day.date)) return false;
  if (pin.technicianId !== null && pin.technicianId !== technician.technicianId) return false;
  if (isFixed(visit)) return pin.technicianId !== null && pin.date !== null && pin.startMin !== null;
  return needs.every((code) =>
    technician.skills.some(
      (skill) =>
        skill.code === code &&
        (skill.validFrom === null || skill.validFrom <= day.date) &&
        (skill.validTo === null || skill.validTo >= day.date),
    ),
  );
}

function dayHasGap(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes'>,
  visit: PlanVisit,
  technician: Technician,
  day: WorkDay,
  plannedVisitIds: ReadonlySet<string>,
  notBeforeMin: number,
): boolean {
  const closed = closedSpans(day);
  const route = plan.routes.find((one) => one.technicianId === technician.technicianId && one.date === day.date);
  const index = new Map(problem.places.map((place, at) => [place.placeId, at]));
  const placeOf = new Map(problem.visits.map((one) => [one.visitId, one.placeId]));
  const travel = (from: string, to: string): number =>
    problem.travel.minutes[index.get(from) ?? -1]?.[index.get(to) ?? -1] ?? Number.NaN;
  const stops = (route?.stops ?? []).map((stop) => ({
    placeId: placeOf.get(stop.visitId) ?? '',
    fromMin: stop.startMin,
    toMin: stop.endMin,
  }));
  const home = technician.homePlaceId;
  const busy = [...stayPoints(problem, technician.technicianId, day, plannedVisitIds), ...stops].sort(
    (a, b) => a.fromMin - b.fromMin,
  );
  const points = [
    { placeId: home, fromMin: day.startMin, toMin: day.startMin },
    ...busy,
    { placeId: home, fromMin: day.endMin, toMin: day.endMin },
  ];
  const windows =
    isFixed(visit) || visit.windows === null ? null : visit.windows.filter((one) => one.date === day.date);
  /** From when on they are over with all that began before. */
  let free = day.startMin;
  for (let at = 0; at + 1 < points.length; at += 1) {
    const before = points[at];
    const after = points[at + 1];
    if (before === undefined || after === undefined) continue;
    free = Math.max(free, before.toMin);
    const there = travel(before.placeId, visit.placeId);
    const onwards = travel(visit.placeId, after.placeId);
    for (let start = free; start + visit.durationMin <= after.fromMin; start += 1) {
      if (visit.pin.startMin !== null && start !== visit.pin.startMin) continue;
      const finish = finishOf(closed, start, visit);
      if (start < notBeforeMin || finish === null || finish > Math.min(after.fromMin, day.endMin)) continue;
      if (windows !== null && !windows.some((one) => one.fromMin <= start && start <= one.toMin)) continue;
      const getsThere = freeMinutes(closed, free, start) >= there;
      if (getsThere && freeMinutes(closed, finish, after.fromMin) >= onwards) return true;
    }
  }
  return false;
}
