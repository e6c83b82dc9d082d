/** A state of the search as a plan a person can read: minutes of every stop, reasons of what was left out, the goals. */
import type { Plan, Route, Stop } from '../plan.ts';
import type { CompiledProblem } from './compileProblem.ts';
import { explainLeftOut } from './explainLeftOut.ts';
import { arrivalOf, departureOf, earliestOnGrain, earliestStart, latestStart } from './passBreaks.ts';
import { earliestStartOf, endOf, orderOf, placeOfNode, pressedStart, type RouteState } from './routeState.ts';
import { scoreOf } from './scoreOf.ts';

export function readPlan(compiled: CompiledProblem, state: RouteState): Plan {
  const routes = readRoutes(compiled, state);
  const unplanned = compiled.problem.visits
    .filter((_, visit) => (state.routeOf[visit] as number) < 0)
    .map((visit) => ({ visitId: visit.visitId, reasons: explainLeftOut(compiled, routes, visit) }));
  return { routes, unplanned, score: scoreOf(compiled, state, routes) };
}

function readRoutes(compiled: CompiledProblem, state: RouteState): readonly Route[] {
  const { model, problem, routes } = compiled;
  return routes.flatMap(({ technicianId, date }, route) => {
    const order = orderOf(model, state, route);
    if (!order.some((node) => node < model.firstStay)) return [];
    const starts = startsAt(compiled, state, route, order);
    const stops: Stop[] = [];
    let left: number | null = null;
    let place = model.routeHome[route] as number;
    order.forEach((node, at) => {
      const startMin = starts[at] ?? 0;
      const there = model.visitPlace[node] as number;
      const travel = model.travel[place * model.placeCount + there] as number;
      // Who leaves home just in time arrives as the visit starts.
      const arriveMin: number = left === null ? startMin : arrivalOf(model, route, left, travel);
      left = endOf(model, state, route, node, startMin);
      place = there;
      if (node < model.firstStay)
        stops.push({ visitId: problem.visits[node]?.visitId ?? '', arriveMin, startMin, endMin: left });
    });
    return [{ technicianId, date, stops }];
  });
}

/** The start a visit has now, if it stays with its technician on its day; else null. */
export function keptOf({ problem, routes, preferred }: CompiledProblem, route: number, node: number): number | null {
  const at = preferred.get(problem.visits[node]?.visitId ?? '');
  const key = routes[route];
  return at !== undefined && at.technicianId === key?.technicianId && at.date === key.date ? at.startMin : null;
}

/** When each visit of a route begins, the route being as refreshed. */
export function startsAt(
  compiled: CompiledProblem,
  state: RouteState,
  route: number,
  order: readonly number[],
): readonly number[] {
  const kept = order.map((node) => keptOf(compiled, route, node));
  return kept.some((start) => start !== null)
    ? keptStarts(compiled.model, state, route, order, kept)
    : startsOf(compiled.model, state, route, order);
}

/** Each visit at the start it has now where that is still possible, otherwise as early as it can be. */
function keptStarts(
  model: CompiledProblem['model'],
  state: RouteState,
  route: number,
  order: readonly number[],
  kept: readonly (number | null)[],
): number[] {
  let left = model.routeStart[route] as number;
  let place = model.routeHome[route] as number;
  return order.map((node, at) => {
    const there = model.visitPlace[node] as number;
    if (node >= model.firstStay) {
      place = there;
      left = state.departs[node] as number;
      return earliestStartOf(model, state, route, node);
    }
    const arrives = arrivalOf(model, route, left, model.travel[place * model.placeCount + there] as number);
    const from = Math.max(
      arrives,
      model.optionFrom[state.optionOf[node] as number] as number,
      state.notBefore[node] as number,
    );
    const now = kept[at] ?? null;
    const grain = model.optionGrain[state.optionOf[node] as number] as number;
    const onGrain = (minute: number): number => earliestOnGrain(model, route, minute, node, grain);
    const wanted = onGrain(Math.max(from, now ?? from));
    const isNowPossible =
      now !== null &&
      now >= from &&
      earliestStart(model, route, now, node) === now &&
      now <= latestToTheMinute(model, state, route, node);
    const start = isNowPossible ? now : wanted <= (state.latest[node] as number) ? wanted : onGrain(from);
    left = endOf(model, state, route, node, start);
    place = there;
    return start;
  });
}

/** The start somebody has chosen stays, on the grain or not. */
function latestToTheMinute(model: CompiledProblem['model'], state: RouteState, route: number, node: number): number {
  const following = state.next[node] as number;
  const onward = placeOfNode(model, following, route);
  const way = model.travel[(model.visitPlace[node] as number) * model.placeCount + onward] as number;
  const over = departureOf(model, route, state.latest[following] as number, way);
  const until = Math.min(model.optionTo[state.optionOf[node] as number] as number, state.notAfter[node] as number);
  return latestStart(model, route, until, over, node);
}

/** The last visit as early as it can be, the others as late as that allows: no waiting that could be spent at home. */
function startsOf(
  model: CompiledProblem['model'],
  state: RouteState,
  route: number,
  order: readonly number[],
): number[] {
  const starts: number[] = new Array(order.length);
  let nextStart = -1;
  let nextPlace = -1;
  for (let at = order.length - 1; at >= 0; at -= 1) {
    const node = order[at] ?? -1;
    const place = model.visitPlace[node] as number;
    nextStart =
      nextStart < 0
        ? earliestStartOf(model, state, route, node)
        : pressedStart(
            model,
            state,
            route,
            node,
            nextStart,
            model.travel[place * model.placeCount + nextPlace] as number,
          );
    nextPlace = place;
    starts[at] = nextStart;
  }
  return starts;
}
