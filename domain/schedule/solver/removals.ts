/** Ways of taking visits out of a plan before they are put back: by chance, the dear ones, neighbours, whole short routes, strings. */
import type { Pool } from './insertAll.ts';
import type { RandomSource } from './randomSource.ts';
import { placeOfNode, type RouteState, refreshRoute, takeOut } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';

export type Removal = (state: RouteState, pool: Pool, count: number) => void;

/** Neighbours kept per visit: strings and related visits never look further. */
const NEIGHBOURS = 120;
/** As in the published method of slack induction by string removals (Christiaens, Vanden Berghe 2020): longest string, mean number removed. */
const LONGEST_STRING = 10;
const MEAN_STRING_VISITS = 10;

export function createRemovals(model: RoutingModel, random: RandomSource): readonly Removal[] {
  const { visitCount, routeCount } = model;
  const changed = new Uint8Array(routeCount);
  const isChangedList = new Int32Array(routeCount);
  let changedCount = 0;
  const keys = new Float64Array(visitCount);
  const order = new Int32Array(visitCount);
  const neighbours = listNeighbours(model);
  const perVisit = Math.min(NEIGHBOURS, Math.max(0, visitCount - 1));
  let current: Pool;

  const onTaken = (visit: number, route: number): void => {
    if (visit >= 0) {
      current.visits[current.count] = visit;
      current.count += 1;
    }
    if (changed[route] === 0) {
      changed[route] = 1;
      isChangedList[changedCount] = route;
      changedCount += 1;
    }
  };

  function finish(state: RouteState): void {
    for (let at = 0; at < changedCount; at += 1) {
      const route = isChangedList[at] as number;
      changed[route] = 0;
      refreshRoute(model, state, route);
    }
    changedCount = 0;
  }

  const take = (state: RouteState, visit: number): void => {
    if (model.isMovable[visit] === 1 && (state.routeOf[visit] as number) >= 0) takeOut(model, state, visit, onTaken);
  };

  /** A planned, movable visit by chance; −1: there is none. */
  function anyPlanned(state: RouteState): number {
    const from = random.below(visitCount);
    for (let step = 0; step < visitCount; step += 1) {
      const visit = (from + step) % visitCount;
      if ((state.routeOf[visit] as number) >= 0 && model.isMovable[visit] === 1) return visit;
    }
    return -1;
  }

  const byChance: Removal = (state, pool, count) => {
    current = pool;
    for (let taken = 0; taken < count; taken += 1) {
      const visit = anyPlanned(state);
      if (visit < 0) break;
      take(state, visit);
    }
    finish(state);
  };

  /** The visits whose detour costs most, with some luck. */
  const dear: Removal = (state, pool, count) => {
    current = pool;
    let listed = 0;
    for (let visit = 0; visit < visitCount; visit += 1) {
      const route = state.routeOf[visit] as number;
      if (route < 0 || model.isMovable[visit] === 0) continue;
      const option = state.optionOf[visit] as number;
      keys[visit] = detourOf(model, state, visit, route) + (model.optionPenalty[option] as number);
      order[listed] = visit;
      listed += 1;
    }
    takeByKey(state, listed, count);
    finish(state);
  };

  /** Visits near a first one in place, day and time. */
  const related: Removal = (state, pool, count) => {
    current = pool;
    const first = anyPlanned(state);
    if (first >= 0) {
      const route = state.routeOf[first] as number;
      const starts = state.departs[first] as number;
      let listed = 0;
      const base = first * perVisit;
      for (let at = 0; at < perVisit; at += 1) {
        const visit = neighbours[base + at] as number;
        const other = state.routeOf[visit] as number;
        if (other < 0 || model.isMovable[visit] === 0) continue;
        const apart = Math.abs((state.departs[visit] as number) - starts);
        const days = Math.abs((model.routeDay[other] as number) - (model.routeDay[route] as number));
        keys[visit] = -(at + apart * relatedTimeWeight + days * 6 + (other === route ? -3 : 0));
        order[listed] = visit;
        listed += 1;
      }
      take(state, first);
      takeByKey(state, listed, count - 1);
    }
    finish(state);
  };
  const relatedTimeWeight = 20 / Math.max(1, meanDay(model));

  /** Picks from the list those with the largest keys, now and then passing one over. */
  function takeByKey(state: RouteState, listed: number, count: number): void {
    const list = order.subarray(0, listed);
    list.sort((a, b) => (keys[b] as number) - (keys[a] as number) || a - b);
    let left = listed;
    for (let taken = 0; taken < count && left > 0; taken += 1) {
      const at = Math.floor(random.next() ** 4 * left);
      take(state, list[at] as number);
      list.copyWithin(at, at + 1, left);
      left -= 1;
    }
  }

  /** All of a short route: the only way to do without it. */
  const shortRoute: Removal = (state, pool, count) => {
    current = pool;
    let chosen = -1;
    for (let attempt = 0; attempt < 4; attempt += 1) {
      const visit = anyPlanned(state);
      const route = visit < 0 ? -1 : (state.routeOf[visit] as number);
      if (route >= 0 && (chosen < 0 || (state.count[route] as number) < (state.count[chosen] as number)))
        chosen = route;
    }
    if (chosen >= 0) {
      const end = visitCount + routeCount + chosen;
      for (let node = state.next[visitCount + chosen] as number; node !== end; ) {
        const following = state.next[node] as number;
        // What waits for it may stand further on in the same route and go with it.
        if (state.routeOf[node] === chosen) take(state, node);
        node = following < visitCount && state.routeOf[following] !== chosen ? end : following;
      }
      void count;
    }
    finish(state);
  };

  /** Strings of neighbours in several routes around one place. */
  const strings: Removal = (state, pool, count) => {
    current = pool;
    const first = anyPlanned(state);
    if (first >= 0) {
      let planned = 0;
      let used = 0;
      for (let route = 0; route < routeCount; route += 1) {
        const size = state.count[route] as number;
        planned += size;
        if (size > 0) used += 1;
      }
      const longest = Math.max(1, Math.min(LONGEST_STRING, planned / Math.max(1, used)));
      const mostStrings = (4 * Math.min(MEAN_STRING_VISITS, count)) / (1 + longest) - 1;
      const wanted = Math.floor(random.next() * Math.max(0, mostStrings) + 1);
      let cut = 0;
      cutString(state, first, longest);
      cut += 1;
      const base = first * perVisit;
      for (let at = 0; at < perVisit && cut < wanted; at += 1) {
        const visit = neighbours[base + at] as number;
        const route = state.routeOf[visit] as number;
        if (route < 0 || changed[route] === 1 || model.isMovable[visit] === 0) continue;
        cutString(state, visit, longest);
        cut += 1;
      }
    }
    finish(state);
  };

  function cutString(state: RouteState, visit: number, longest: number): void {
    const route = state.routeOf[visit] as number;
    const size = state.count[route] as number;
    const length = Math.floor(random.next() * Math.min(longest, size) + 1);
    const end = visitCount + routeCount + route;
    // How many stay in the middle of the string: half of the time none.
    let spared = 0;
    if (length > 1 && length < size && random.next() < 0.5) {
      spared = 1;
      while (length + spared < size && random.next() > 0.01) spared += 1;
    }
    const span = Math.min(size, length + spared);
    let before = 0;
    for (let node = state.previous[visit] as number; node < visitCount; node = state.previous[node] as number)
      before += 1;
    const fewest = Math.max(0, before + span - size);
    let back = fewest + random.below(Math.min(before, span - 1) - fewest + 1);
    let node = visit;
    for (; back > 0; back -= 1) node = state.previous[node] as number;
    const sparedFrom = spared === 0 ? span : 1 + random.below(Math.max(1, length - 1));
    string.length = 0;
    for (let at = 0; at < span && node !== end; at += 1) {
      if (at < sparedFrom || at >= sparedFrom + spared) string.push(node);
      node = state.next[node] as number;
    }
    for (const one of string) take(state, one);
  }
  const string: number[] = [];

  return [strings, byChance, dear, related, shortRoute];
}

function detourOf(model: RoutingModel, state: RouteState, visit: number, route: number): number {
  const before = placeOfNode(model, state.previous[visit] as number, route);
  const following = placeOfNode(model, state.next[visit] as number, route);
  const place = model.visitPlace[visit] as number;
  const { travel, placeCount } = model;
  return (
    (travel[before * placeCount + place] as number) +
    (travel[place * placeCount + following] as number) -
    (travel[before * placeCount + following] as number)
  );
}

function meanDay(model: RoutingModel): number {
  let sum = 0;
  for (let route = 0; route < model.routeCount; route += 1)
    sum += (model.routeEnd[route] as number) - (model.routeStart[route] as number);
  return sum / Math.max(1, model.routeCount);
}

/** The nearest visits of each, by travel there and back. */
function listNeighbours(model: RoutingModel): Int32Array {
  const { visitCount, placeCount, travel, visitPlace } = model;
  const perVisit = Math.min(NEIGHBOURS, Math.max(0, visitCount - 1));
  const lists = new Int32Array(visitCount * perVisit);
  const apart = new Float64Array(visitCount);
  const others = new Int32Array(visitCount);
  for (let visit = 0; visit < visitCount; visit += 1) {
    const place = visitPlace[visit] as number;
    for (let other = 0; other < visitCount; other += 1) {
      const there = visitPlace[other] as number;
      others[other] = other;
      apart[other] =
        other === visit
          ? -1
          : (travel[place * placeCount + there] as number) + (travel[there * placeCount + place] as number);
    }
    others.sort((a, b) => (apart[a] as number) - (apart[b] as number) || a - b);
    lists.set(others.subarray(1, perVisit + 1), visit * perVisit);
  }
  return lists;
}
