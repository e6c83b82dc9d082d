/** The seven goals of a finished plan, from the state's sums, and promises and waiting as they are to the minute. */
import type { Route, Score } from '../plan.ts';
import { isFixed } from '../planningProblem.ts';
import type { CompiledProblem } from './compileProblem.ts';
import { countGoals, newGoals } from './countGoals.ts';
import { arrivalOf, closedMinutes } from './passBreaks.ts';
import type { RouteState } from './routeState.ts';

export function scoreOf(compiled: CompiledProblem, state: RouteState, routes: readonly Route[]): Score {
  const { model, problem } = compiled;
  const goals = newGoals();
  countGoals(model, state, goals, new Float64Array(model.technicianCount));
  const startOf = new Map(
    routes.flatMap((route) => route.stops.map((stop) => [stop.visitId, { date: route.date, startMin: stop.startMin }])),
  );
  const moved = problem.visits.filter((visit) => {
    const { promised } = visit;
    if (promised === null || isFixed(visit)) return false;
    const placed = startOf.get(visit.visitId);
    return placed?.date !== promised.date || placed.startMin < promised.fromMin || placed.startMin > promised.toMin;
  }).length;
  const [s1 = 0, s2 = 0, s3 = 0, , s5 = 0, , s7 = 0] = goals;
  return [s1, s2, s3, moved, s5, overtimeAndIdle(compiled, routes), s7];
}

/** From the minutes of the stops: kept starts may leave more waiting than the search had to. */
function overtimeAndIdle({ model, routes: keys, visitNumber }: CompiledProblem, routes: readonly Route[]): number {
  const routeNumber = new Map(keys.map((key, index) => [JSON.stringify([key.technicianId, key.date]), index]));
  let sum = 0;
  for (const { technicianId, date, stops } of routes) {
    const route = routeNumber.get(JSON.stringify([technicianId, date])) ?? -1;
    const home = model.routeHome[route] as number;
    let left: number | null = null;
    let place = home;
    for (const { visitId, startMin, endMin } of stops) {
      const there = model.visitPlace[visitNumber.get(visitId) ?? -1] as number;
      const travel = model.travel[place * model.placeCount + there] as number;
      if (left !== null) sum += startMin - left - travel - closedMinutes(model, route, left, startMin);
      left = endMin;
      place = there;
    }
    if (left === null) continue;
    const isHome = arrivalOf(model, route, left, model.travel[place * model.placeCount + home] as number);
    sum += Math.max(0, isHome - (model.routeOrdinaryEnd[route] as number));
  }
  return sum;
}
