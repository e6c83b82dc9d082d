/** Why a visit is not in the plan: what keeps it from every day, or from the gaps that are left. */
import type { Route } from '../plan.ts';
import { isFixed, type PlanVisit } from '../planningProblem.ts';
import type { DayObstacle, UnplannedReason } from '../unplannedReason.ts';
import { type CompiledProblem, hasPin } from './compileProblem.ts';
import { closedSpansOf, staysOf } from './fixedVisits.ts';
import { findDayObstacle, travelBetween } from './listOptions.ts';

export function explainLeftOut(
  compiled: CompiledProblem,
  routes: readonly Route[],
  visit: PlanVisit,
): readonly UnplannedReason[] {
  const { problem, model, contradicted, visitNumber } = compiled;
  if (isFixed(visit)) return [{ code: 'fixed-does-not-fit' }];
  const unknown = findUnknownPin(compiled, visit);
  if (unknown !== null) return [unknown];
  const number = visitNumber.get(visit.visitId) ?? -1;
  const first = model.optionIndex[number] as number;
  const end = model.optionIndex[number + 1] as number;
  if (first === end) {
    const travel = travelBetween(problem);
    const { pin } = visit;
    const obstacles = problem.technicians
      .filter((technician) => pin.technicianId === null || technician.technicianId === pin.technicianId)
      .flatMap((technician) =>
        technician.days
          .filter((day) => pin.date === null || day.date === pin.date)
          .map((day) => {
            const stays = staysOf(problem, technician, day, contradicted);
            return findDayObstacle(travel, visit, { technician, day, closed: closedSpansOf(day), stays });
          }),
      );
    return [{ code: 'nobody-can', isPinned: hasPin(visit), obstacles: countObstacles(obstacles) }];
  }
  const { afterVisitId } = visit;
  if (afterVisitId !== null && !routes.some((route) => route.stops.some((stop) => stop.visitId === afterVisitId)))
    return [{ code: 'earlier-visit-not-planned', afterVisitId }];
  const candidates = new Set(model.optionRoute.subarray(first, end));
  if (!hasPin(visit)) return [{ code: 'no-gap', candidateDays: candidates.size }];
  const withVisitIds = clashingVisits(compiled, routes, visit, candidates);
  if (afterVisitId !== null && !withVisitIds.includes(afterVisitId)) withVisitIds.push(afterVisitId);
  return [{ code: 'pin-clash', withVisitIds }];
}

function findUnknownPin({ problem }: CompiledProblem, { pin }: PlanVisit): UnplannedReason | null {
  if (pin.technicianId !== null && !problem.technicians.some((one) => one.technicianId === pin.technicianId))
    return { code: 'pin-unknown', field: 'technician' };
  if (pin.date !== null && !problem.technicians.some((one) => one.days.some((day) => day.date === pin.date)))
    return { code: 'pin-unknown', field: 'date' };
  return null;
}

function countObstacles(
  found: readonly (DayObstacle | null)[],
): readonly { readonly obstacle: DayObstacle; readonly days: number }[] {
  const counts = new Map<string, { readonly obstacle: DayObstacle; days: number }>();
  for (const obstacle of found) {
    if (obstacle === null) continue;
    const key = JSON.stringify(obstacle);
    const counted = counts.get(key);
    if (counted === undefined) counts.set(key, { obstacle, days: 1 });
    else counted.days += 1;
  }
  return [...counts.values()].sort((a, b) => b.days - a.days);
}

/** What stands where the pin wants to be: neighbours that can't both be, or all of those days when no start is pinned. */
function clashingVisits(
  { problem, routes: keys }: CompiledProblem,
  routes: readonly Route[],
  visit: PlanVisit,
  candidates: ReadonlySet<number>,
): string[] {
  const travel = travelBetween(problem);
  const placeOf = new Map(problem.visits.map((one) => [one.visitId, one.placeId]));
  const { startMin } = visit.pin;
  const onThoseDays = [...candidates].flatMap((candidate) => {
    const key = keys[candidate];
    return routes.find((route) => route.technicianId === key?.technicianId && route.date === key.date)?.stops ?? [];
  });
  if (startMin === null) return onThoseDays.map((stop) => stop.visitId);
  const endMin = startMin + visit.durationMin;
  const near = onThoseDays.filter((stop) => {
    const place = placeOf.get(stop.visitId) ?? '';
    const isBefore = stop.endMin + travel(place, visit.placeId) <= startMin;
    const isAfter = endMin + travel(visit.placeId, place) <= stop.startMin;
    return !isBefore && !isAfter;
  });
  // Breaks on the way can be what is in the way: then the whole day is named.
  return (near.length > 0 ? near : onThoseDays).map((stop) => stop.visitId);
}
