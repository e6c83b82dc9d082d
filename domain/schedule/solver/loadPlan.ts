/** Puts a plan that exists into a state: stops in their order where that still keeps the rules, the others left out. */
import type { Plan } from '../plan.ts';
import { isOnGrain } from '../startGrain.ts';
import { improveInsertion, newInsertion } from './bestInsertion.ts';
import type { CompiledProblem } from './compileProblem.ts';
import { createState, insertVisit, type RouteState } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';

export type LoadedPlan = {
  readonly state: RouteState;
  /** Stops that can't stay where they were. */
  readonly displaced: readonly string[];
};

export function loadPlan(compiled: CompiledProblem, plan: Pick<Plan, 'routes'>): LoadedPlan {
  const { model, routes, visitNumber } = compiled;
  const state = createState(model);
  const routeNumber = new Map(routes.map((key, index) => [JSON.stringify([key.technicianId, key.date]), index]));
  const stops = plan.routes.flatMap((route) => {
    const number = routeNumber.get(JSON.stringify([route.technicianId, route.date]));
    return route.stops.map((stop) => ({ ...stop, date: route.date, route: number ?? -1 }));
  });
  // In time, so that a visit is there before the one that waits for it.
  stops.sort((a, b) => a.date.localeCompare(b.date) || a.startMin - b.startMin);
  const displaced: string[] = [];
  for (const stop of stops) {
    const visit = visitNumber.get(stop.visitId);
    if (visit === undefined) continue;
    if (stop.route < 0 || !append(compiled, state, visit, stop.route, stop.startMin)) displaced.push(stop.visitId);
  }
  return { state, displaced };
}

/** At the end of the route, in the option that holds its present start if there is one. */
function append(
  { model }: CompiledProblem,
  state: RouteState,
  visit: number,
  route: number,
  startMin: number,
): boolean {
  const end = model.optionIndex[visit + 1] as number;
  const last = lastBefore(model, state, route, startMin);
  const options: number[] = [];
  for (let option = model.optionIndex[visit] as number; option < end; option += 1) {
    if (model.optionRoute[option] === route) options.push(option);
  }
  const holds = (option: number): boolean =>
    (model.optionFrom[option] as number) <= startMin && startMin <= (model.optionTo[option] as number);
  // To the minute where it is so now: put onto the grain it would push the next ones out of their places.
  const suits = (option: number): boolean => isOnGrain(startMin, model.optionGrain[option] as number);
  options.sort((a, b) => Number(holds(b)) - Number(holds(a)) || Number(suits(b)) - Number(suits(a)) || a - b);
  for (const option of options) {
    const best = newInsertion();
    // Only behind the last stop: the order of an existing day is kept, and if it can be its place among the stays.
    improveInsertion(model, state, visit, option, option + 1, best, last, last);
    if (best.option < 0) improveInsertion(model, state, visit, option, option + 1, best, last);
    if (best.option < 0) continue;
    insertVisit(model, state, visit, option, best.behind);
    return true;
  }
  return false;
}

/** The last stop of a route, or a stay behind it that begins before the minute. */
function lastBefore(model: RoutingModel, state: RouteState, route: number, minute: number): number {
  const start = model.visitCount + route;
  let node = state.previous[start + model.routeCount] as number;
  while (
    node !== start &&
    node >= model.firstStay &&
    (model.optionFrom[state.optionOf[node] as number] as number) >= minute
  )
    node = state.previous[node] as number;
  return node;
}
