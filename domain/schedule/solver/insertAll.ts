/** Putting visits back: one after the other at the cheapest place, or the one first that has most to lose by waiting. */
import { endOfRouteOptions, type Insertion, improveInsertion, newInsertion } from './bestInsertion.ts';
import type { RandomSource } from './randomSource.ts';
import { insertVisit, type RouteState } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';

export type Pool = { readonly visits: Int32Array; count: number };

export function createPool(model: RoutingModel): Pool {
  return { visits: new Int32Array(Math.max(1, model.visitCount)), count: 0 };
}

/** May the visit be tried now: not planned yet, and what it waits for is. */
function isReady(model: RoutingModel, state: RouteState, visit: number): boolean {
  const earlier = model.after[visit] as number;
  return (state.routeOf[visit] as number) < 0 && (earlier < 0 || (state.routeOf[earlier] as number) >= 0);
}

/** An empty route is passed over when another of its kind, empty too, comes before it. */
function isRepeatedEmpty(
  model: RoutingModel,
  state: RouteState,
  route: number,
  seen: Int32Array,
  round: number,
): boolean {
  if ((state.count[route] as number) > 0) return false;
  const kind = model.routeKind[route] as number;
  if (seen[kind] === round) return true;
  seen[kind] = round;
  return false;
}

export type Inserter = {
  /** In the order of the pool, each at its cheapest place. */
  readonly greedy: (state: RouteState, pool: Pool, blinkShare: number) => void;
  /** Regret of order 1 to 3; noise is a share of the cost. */
  readonly regret: (state: RouteState, pool: Pool, order: number, noise: number, isPressingFirst: boolean) => void;
  /** Positions judged so far. */
  readonly judged: () => number;
};

export function createInserter(model: RoutingModel, random: RandomSource, isToTheMinute = false): Inserter {
  const best = newInsertion(isToTheMinute);
  const seen = new Int32Array(model.routeCount + 1);
  let round = 0;

  function findBest(state: RouteState, visit: number): void {
    round += 1;
    best.cost = Number.POSITIVE_INFINITY;
    const end = model.optionIndex[visit + 1] as number;
    for (let first = model.optionIndex[visit] as number; first < end; ) {
      const routeEnd = endOfRouteOptions(model, visit, first);
      if (!isRepeatedEmpty(model, state, model.optionRoute[first] as number, seen, round))
        improveInsertion(model, state, visit, first, routeEnd, best);
      first = routeEnd;
    }
  }

  function greedy(state: RouteState, pool: Pool, blinkShare: number): void {
    const draw = (): number => 1 + Math.floor(-Math.log(1 - random.next()) / blinkShare);
    best.blinkEvery = draw;
    best.blinkIn = blinkShare > 0 ? draw() : 0;
    for (let isAgain = true; isAgain; ) {
      isAgain = false;
      for (let at = 0; at < pool.count; at += 1) {
        const visit = pool.visits[at] as number;
        if (!isReady(model, state, visit)) continue;
        findBest(state, visit);
        if (best.cost === Number.POSITIVE_INFINITY) continue;
        insertVisit(model, state, visit, best.option, best.behind);
        // Somebody earlier in the order may have waited for this one.
        if (model.dependentIndex[visit] !== model.dependentIndex[visit + 1]) isAgain = true;
      }
    }
    best.blinkIn = 0;
  }

  const cache = createRegretCache(model);

  function regret(state: RouteState, pool: Pool, order: number, noise: number, isPressingFirst: boolean): void {
    best.blinkIn = 0;
    const waiting: number[] = [];
    const active: number[] = [];
    for (let at = 0; at < pool.count; at += 1) {
      const visit = pool.visits[at] as number;
      if ((state.routeOf[visit] as number) >= 0) continue;
      if (isReady(model, state, visit)) active.push(visit);
      else waiting.push(visit);
    }
    for (const visit of active) cache.judge(state, visit, best, noise, random);
    while (active.length > 0) {
      let chosenAt = -1;
      let chosenKey = Number.NEGATIVE_INFINITY;
      let chosenPressing = -1;
      for (let at = 0; at < active.length; at += 1) {
        const pressing = isPressingFirst ? (model.pressing[active[at] as number] as number) : 0;
        if (pressing < chosenPressing) continue;
        const key = cache.regretOf(state, active[at] as number, order);
        if (key === Number.NEGATIVE_INFINITY) continue;
        if (pressing > chosenPressing || key > chosenKey) {
          chosenKey = key;
          chosenPressing = pressing;
          chosenAt = at;
        }
      }
      if (chosenAt < 0) return;
      const visit = active[chosenAt] as number;
      active[chosenAt] = active[active.length - 1] as number;
      active.pop();
      const { option, behind } = cache.bestOf(state, visit);
      insertVisit(model, state, visit, option, behind);
      const route = state.routeOf[visit] as number;
      const earlier = model.after[visit] as number;
      const earlierRoute = earlier < 0 ? -1 : (state.routeOf[earlier] as number);
      for (const other of active) {
        cache.judgeRoute(state, other, route, best, noise, random);
        if (earlierRoute >= 0 && earlierRoute !== route)
          cache.judgeRoute(state, other, earlierRoute, best, noise, random);
      }
      // A visit that waits for one in a changed route may start at another time elsewhere on that day.
      for (const other of active) {
        const waitsFor = model.after[other] as number;
        if (waitsFor >= 0 && (state.routeOf[waitsFor] === route || state.routeOf[waitsFor] === earlierRoute))
          cache.judge(state, other, best, noise, random);
      }
      for (let at = waiting.length - 1; at >= 0; at -= 1) {
        const other = waiting[at] as number;
        if (model.after[other] !== visit) continue;
        waiting.splice(at, 1);
        active.push(other);
        cache.judge(state, other, best, noise, random);
      }
    }
  }

  return { greedy, regret, judged: () => best.judged };
}

type RegretCache = {
  readonly judge: (state: RouteState, visit: number, best: Insertion, noise: number, random: RandomSource) => void;
  readonly judgeRoute: (
    state: RouteState,
    visit: number,
    route: number,
    best: Insertion,
    noise: number,
    random: RandomSource,
  ) => void;
  /** Larger: to be put back sooner; −∞: nowhere to put it. */
  readonly regretOf: (state: RouteState, visit: number, order: number) => number;
  readonly bestOf: (state: RouteState, visit: number) => { readonly option: number; readonly behind: number };
};

/** Larger than any cost of one insertion: what a route that can't take the visit adds to its regret. */
const NO_PLACE = 1e17;

/** The cheapest insertion of each visit into each route; only a changed route is judged again. */
function createRegretCache(model: RoutingModel): RegretCache {
  const { visitCount, routeCount } = model;
  // One slot per visit and route it has options for: few where licences and windows are narrow.
  const slotIndex = new Int32Array(visitCount + 1);
  const slotFirst: number[] = [];
  for (let visit = 0; visit < visitCount; visit += 1) {
    const end = model.optionIndex[visit + 1] as number;
    for (let first = model.optionIndex[visit] as number; first < end; first = endOfRouteOptions(model, visit, first))
      slotFirst.push(first);
    slotIndex[visit + 1] = slotFirst.length;
  }
  const firstOption = Int32Array.from(slotFirst);
  const slotRoute = Int32Array.from(slotFirst, (first) => model.optionRoute[first] as number);
  const cost = new Float64Array(firstOption.length);
  const option = new Int32Array(firstOption.length);
  const behind = new Int32Array(firstOption.length);
  const emptyKinds = new Int32Array(routeCount + 1);
  let round = 0;

  function judgeSlot(
    state: RouteState,
    visit: number,
    slot: number,
    best: Insertion,
    noise: number,
    random: RandomSource,
  ): void {
    const first = firstOption[slot] as number;
    best.cost = Number.POSITIVE_INFINITY;
    improveInsertion(model, state, visit, first, endOfRouteOptions(model, visit, first), best);
    const isFound = best.cost !== Number.POSITIVE_INFINITY;
    cost[slot] = isFound && noise > 0 ? best.cost + noise * (random.next() * 2 - 1) : best.cost;
    option[slot] = best.option;
    behind[slot] = best.behind;
  }

  function findSlot(visit: number, route: number): number {
    let low = slotIndex[visit] as number;
    let high = (slotIndex[visit + 1] as number) - 1;
    while (low <= high) {
      const middle = (low + high) >> 1;
      const at = slotRoute[middle] as number;
      if (at === route) return middle;
      if (at < route) low = middle + 1;
      else high = middle - 1;
    }
    return -1;
  }

  return {
    judge(state, visit, best, noise, random) {
      for (let slot = slotIndex[visit] as number; slot < (slotIndex[visit + 1] as number); slot += 1) {
        judgeSlot(state, visit, slot, best, noise, random);
      }
    },
    judgeRoute(state, visit, route, best, noise, random) {
      const slot = findSlot(visit, route);
      if (slot >= 0) judgeSlot(state, visit, slot, best, noise, random);
    },
    regretOf(state, visit, order) {
      round += 1;
      let first = Number.POSITIVE_INFINITY;
      let second = Number.POSITIVE_INFINITY;
      let third = Number.POSITIVE_INFINITY;
      for (let slot = slotIndex[visit] as number; slot < (slotIndex[visit + 1] as number); slot += 1) {
        const value = cost[slot] as number;
        if (value >= third) continue;
        if (isRepeatedEmpty(model, state, slotRoute[slot] as number, emptyKinds, round)) continue;
        if (value < first) {
          third = second;
          second = first;
          first = value;
        } else if (value < second) {
          third = second;
          second = value;
        } else {
          third = value;
        }
      }
      if (first === Number.POSITIVE_INFINITY) return Number.NEGATIVE_INFINITY;
      if (order === 1) return -first;
      const toSecond = second === Number.POSITIVE_INFINITY ? NO_PLACE : second - first;
      if (order === 2) return toSecond;
      return toSecond + (third === Number.POSITIVE_INFINITY ? NO_PLACE : third - first);
    },
    bestOf(_state, visit) {
      let chosen = slotIndex[visit] as number;
      for (let slot = chosen + 1; slot < (slotIndex[visit + 1] as number); slot += 1) {
        if ((cost[slot] as number) < (cost[chosen] as number)) chosen = slot;
      }
      return { option: option[chosen] as number, behind: behind[chosen] as number };
    },
  };
}
