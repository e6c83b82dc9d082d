/** The seven goals of a finished plan, from the state's sums and the promises as they are kept to the minute. */
import type { Route, Score } from '../plan.ts';
import { isFixed } from '../planningProblem.ts';
import type { CompiledProblem } from './compileProblem.ts';
import { countGoals, newGoals } from './countGoals.ts';
import type { RouteState } from './routeState.ts';

export function scoreOf({ model, problem }: CompiledProblem, state: RouteState, routes: readonly Route[]): Score {
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
  const [s1 = 0, s2 = 0, s3 = 0, , s5 = 0, s6 = 0, s7 = 0] = goals;
  return [s1, s2, s3, moved, s5, s6, s7];
}
