/** The goals of a finished plan, from the state's sums, and promises and waiting as they are to the minute. */
import type { Route, Score } from '../plan.ts';
import { isFixed } from '../planningProblem.ts';
import type { CompiledProblem } from './compileProblem.ts';
import { countGoals, newGoals } from './countGoals.ts';
import { arrivalOf, closedMinutes } from './passBreaks.ts';
import { earliestStartOf, endOf, orderOf, type RouteState } from './routeState.ts';

type StartOf = ReadonlyMap<string, { readonly date: string; readonly startMin: number }>;

export function scoreOf(compiled: CompiledProblem, state: RouteState, routes: readonly Route[]): Score {
  const { model, problem } = compiled;
  const goals = newGoals();
  countGoals(model, state, goals, new Float64Array(model.technicianCount));
  const startOf: StartOf = new Map(
    routes.flatMap((route) => route.stops.map((stop) => [stop.visitId, { date: route.date, startMin: stop.startMin }])),
  );
  const moved = problem.visits.filter((visit) => {
    const { promised } = visit;
    if (promised === null || isFixed(visit)) return false;
    const placed = startOf.get(visit.visitId);
    return placed?.date !== promised.date || placed.startMin < promised.fromMin || placed.startMin > promised.toMin;
  }).length;
  const [s1 = 0, s2 = 0, s3 = 0, , w = 0, , , s7 = 0] = goals;
  const travelMin = state.travel.reduce((sum, minutes) => sum + minutes, 0);
  return [s1, s2, s3, moved, w, travelMin, overtimeAndIdle(compiled, state, startOf), s7];
}

/** From the minutes of the stops: kept starts may leave more waiting than the search had to. */
function overtimeAndIdle({ model, problem }: CompiledProblem, state: RouteState, startOf: StartOf): number {
  let sum = 0;
  for (let route = 0; route < model.routeCount; route += 1) {
    const home = model.routeHome[route] as number;
    let left: number | null = null;
    let place = home;
    for (const node of orderOf(model, state, route)) {
      const there = model.visitPlace[node] as number;
      const travel = model.travel[place * model.placeCount + there] as number;
      const begins =
        startOf.get(problem.visits[node]?.visitId ?? '')?.startMin ?? earliestStartOf(model, state, route, node);
      if (left !== null) sum += Math.max(0, begins - left - travel - closedMinutes(model, route, left, begins));
      left = endOf(model, state, route, node, begins);
      place = there;
    }
    if (left === null) continue;
    const isHome = arrivalOf(model, route, left, model.travel[place * model.placeCount + home] as number);
    sum += Math.max(0, isHome - (model.routeOrdinaryEnd[route] as number));
  }
  return sum;
}
