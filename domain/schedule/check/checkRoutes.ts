/** The hard rules, on the routes of a plan alone: also what the acceptance of a proposal asks again. */
import type { Plan, Route, Stop } from '../plan.ts';
import { isFixed, type PlanningProblem, type PlanVisit } from '../planningProblem.ts';
import { dayPoints, stayPoints } from './dayPoints.ts';
import { closedSpans, finishOf, freeMinutes } from './freeTime.ts';
import type { Violation } from './violation.ts';

export function checkRoutes(problem: PlanningProblem, plan: Pick<Plan, 'routes'>): Violation[] {
  const found: Violation[] = [];
  const byId = new Map(problem.visits.map((visit) => [visit.visitId, visit]));
  const planned = new Map<string, { readonly date: string; readonly stop: Stop }>();
  const seenRoutes = new Set<string>();
  for (const route of plan.routes) {
    const key = JSON.stringify([route.technicianId, route.date]);
    if (seenRoutes.has(key)) found.push({ code: 'route-twice', technicianId: route.technicianId, date: route.date });
    seenRoutes.add(key);
    for (const stop of route.stops) {
      if (!byId.has(stop.visitId)) found.push({ code: 'visit-unknown', visitId: stop.visitId });
      if (planned.has(stop.visitId)) found.push({ code: 'visit-twice', visitId: stop.visitId });
      planned.set(stop.visitId, { date: route.date, stop });
    }
  }
  if (found.length > 0) return found;
  for (const route of plan.routes) {
    if (route.stops.length > 0) found.push(...checkRoute(problem, route, byId, new Set(planned.keys())));
  }
  for (const [visitId, { date, stop }] of planned) {
    const visit = byId.get(visitId);
    if (visit === undefined || visit.afterVisitId === null || isFixed(visit)) continue;
    const earlier = planned.get(visit.afterVisitId);
    const isAfter =
      earlier !== undefined && (earlier.date < date || (earlier.date === date && earlier.stop.endMin <= stop.startMin));
    if (!isAfter) found.push({ code: 'before-the-earlier-visit', visitId, afterVisitId: visit.afterVisitId });
  }
  return found;
}

function checkRoute(
  problem: PlanningProblem,
  route: Route,
  byId: ReadonlyMap<string, PlanVisit>,
  plannedVisitIds: ReadonlySet<string>,
): Violation[] {
  const { technicianId, date } = route;
  const technician = problem.technicians.find((one) => one.technicianId === technicianId);
  const day = technician?.days.find((one) => one.date === date);
  if (technician === undefined || day === undefined) return [{ code: 'day-unknown', technicianId, date }];
  if (day.isAbsent) return [{ code: 'technician-absent', technicianId, date }];
  const found: Violation[] = [];
  const closed = closedSpans(day);
  const stays = stayPoints(problem, technicianId, day, plannedVisitIds);
  const place = (placeId: string): number => problem.places.findIndex((one) => one.placeId === placeId);
  const travel = (from: string, to: string): number => problem.travel.minutes[place(from)]?.[place(to)] ?? Number.NaN;

  let leftAtMin = day.startMin;
  let leftPlaceId = technician.homePlaceId;
  /** Only of a way that begins or ends at a stop of the plan can the plan be at fault. */
  let isLastAStop = false;
  for (const point of dayPoints(stays, route.stops, (visitId) => byId.get(visitId)?.placeId ?? '')) {
    const { stop } = point;
    if (stop === null) {
      const lackingMin = travel(leftPlaceId, point.placeId) - freeMinutes(closed, leftAtMin, point.fromMin);
      if (isLastAStop && !(lackingMin <= 0))
        found.push({ code: 'not-enough-time-to-get-there', visitId: point.visitId, lackingMin });
      leftAtMin = Math.max(leftAtMin, point.toMin);
      leftPlaceId = point.placeId;
      isLastAStop = false;
      continue;
    }
    const visit = byId.get(stop.visitId);
    if (visit === undefined) continue;
    const { visitId } = visit;
    const travelMin = travel(leftPlaceId, visit.placeId);
    const lackingMin = travelMin - freeMinutes(closed, leftAtMin, stop.startMin);
    // Written so that a missing travel time is a violation too.
    if (!(lackingMin <= 0) || stop.startMin < leftAtMin)
      found.push({ code: 'not-enough-time-to-get-there', visitId, lackingMin });
    const isWhole = [stop.arriveMin, stop.startMin, stop.endMin].every((minute) => Number.isInteger(minute));
    const isArrivalTrue =
      stop.arriveMin <= stop.startMin && freeMinutes(closed, leftAtMin, stop.arriveMin) >= travelMin;
    const finish = finishOf(closed, stop.startMin, visit);
    if (!isWhole || !isArrivalTrue || (finish !== null && stop.endMin !== finish))
      found.push({ code: 'wrong-times', visitId });
    if (stop.startMin < day.startMin || stop.endMin > day.endMin) found.push({ code: 'outside-hours', visitId });
    if (finish === null) found.push({ code: 'on-a-break', visitId });
    if (stays.some((stay) => stay.fromMin < stop.endMin && stop.startMin < stay.toMin))
      found.push({ code: 'fixed-time-taken', visitId });
    found.push(...checkPins(visit, route, stop));
    if (!isFixed(visit)) {
      for (const skill of visit.needs) {
        const holds = technician.skills.some(
          (one) =>
            one.code === skill &&
            (one.validFrom === null || one.validFrom <= date) &&
            (one.validTo === null || date <= one.validTo),
        );
        if (!holds) found.push({ code: 'skill-lacking', visitId, skill });
      }
      const isInside =
        visit.windows === null ||
        visit.windows.some(
          (window) => window.date === date && window.fromMin <= stop.startMin && stop.startMin <= window.toMin,
        );
      if (!isInside) found.push({ code: 'outside-windows', visitId });
    }
    leftAtMin = stop.endMin;
    leftPlaceId = visit.placeId;
    isLastAStop = true;
  }
  if (!isLastAStop) return found;
  const spareMin = freeMinutes(closed, leftAtMin, day.endMin) - travel(leftPlaceId, technician.homePlaceId);
  if (!(spareMin >= 0)) found.push({ code: 'home-too-late', technicianId, date, homeMin: day.endMin - spareMin });
  return found;
}

function checkPins(visit: PlanVisit, route: Route, stop: Stop): Violation[] {
  const { visitId, pin } = visit;
  const broken: Violation[] = [];
  if (pin.technicianId !== null && pin.technicianId !== route.technicianId)
    broken.push({ code: 'pin-broken', visitId, field: 'technician' });
  if (pin.date !== null && pin.date !== route.date) broken.push({ code: 'pin-broken', visitId, field: 'date' });
  if (pin.startMin !== null && pin.startMin !== stop.startMin)
    broken.push({ code: 'pin-broken', visitId, field: 'start' });
  return broken.length > 0 && isFixed(visit) ? [{ code: 'fixed-moved', visitId }] : broken;
}
