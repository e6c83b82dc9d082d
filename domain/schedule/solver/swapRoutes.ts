/**
 * Exchanges all that two routes do, each in its order: somebody else's day, or the same person's on another day. Step by step
 * the search would have to pass through far worse plans to get there.
 */
import { endOfRouteOptions, improveInsertion, newInsertion } from './bestInsertion.ts';
import type { Pool } from './insertAll.ts';
import type { RandomSource } from './randomSource.ts';
import { insertVisit, type RouteState, refreshRoute, takeOut } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';

/** What finds no place in the other route is left in the pool. */
export type SwapRoutes = (state: RouteState, pool: Pool) => void;

export function createSwapRoutes(model: RoutingModel, random: RandomSource, isToTheMinute = false): SwapRoutes {
  const { visitCount, routeCount } = model;
  const changed = new Set<number>();
  const best = newInsertion(isToTheMinute);

  function takeAll(state: RouteState, route: number): readonly number[] {
    const end = visitCount + routeCount + route;
    const order: number[] = [];
    for (let node = state.next[visitCount + route] as number; node !== end; node = state.next[node] as number) {
      if (model.isMovable[node] === 1) order.push(node);
    }
    for (const visit of order) {
      takeOut(model, state, visit, (_taken, at) => changed.add(at));
    }
    return order;
  }

  function append(state: RouteState, visit: number, route: number): void {
    if ((state.routeOf[visit] as number) >= 0) return;
    const first = firstOptionIn(model, visit, route);
    if (first < 0) return;
    best.cost = Number.POSITIVE_INFINITY;
    best.option = -1;
    const last = state.previous[visitCount + routeCount + route] as number;
    improveInsertion(model, state, visit, first, endOfRouteOptions(model, visit, first), best, last);
    if (best.option >= 0) insertVisit(model, state, visit, best.option, best.behind);
  }

  return (state, pool) => {
    const one = random.below(routeCount);
    const other = random.below(routeCount);
    if (model.routeKind[one] === model.routeKind[other]) return;
    changed.clear();
    const ofOne = takeAll(state, one);
    const ofOther = takeAll(state, other);
    for (const route of changed) refreshRoute(model, state, route);
    for (const visit of ofOne) append(state, visit, other);
    for (const visit of ofOther) append(state, visit, one);
    for (let visit = 0; visit < visitCount; visit += 1) {
      // Those that waited for one of them were taken out as well, wherever they stood.
      const isOut = (state.routeOf[visit] as number) < 0 && model.isMovable[visit] === 1;
      if (!isOut || !(ofOne.includes(visit) || ofOther.includes(visit) || waits(model, visit))) continue;
      pool.visits[pool.count] = visit;
      pool.count += 1;
    }
  };
}

function waits(model: RoutingModel, visit: number): boolean {
  return (model.after[visit] as number) >= 0;
}

/** −1: it may not go there at all. Options are in the order of their routes. */
function firstOptionIn(model: RoutingModel, visit: number, route: number): number {
  let low = model.optionIndex[visit] as number;
  let high = model.optionIndex[visit + 1] as number;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((model.optionRoute[middle] as number) < route) low = middle + 1;
    else high = middle;
  }
  return low < (model.optionIndex[visit + 1] as number) && model.optionRoute[low] === route ? low : -1;
}
