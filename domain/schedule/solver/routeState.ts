/**
 * Where every visit stands while the search works. Routes are linked lists: node v < visitCount is a visit, then one start
 * and one end node per route. Each node keeps the earliest departure and the latest start, so that one position for one
 * visit is judged in constant time.
 */
import {
  arrivalOf,
  closedMinutes,
  departureOf,
  earliestOnGrain,
  latestOnGrain,
  workEnd,
  workStart,
} from './passBreaks.ts';
import type { RoutingModel } from './routingModel.ts';

export type RouteState = {
  /** All arrays below are parts of this one, so that a state is copied in one stroke. */
  readonly all: Int32Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  /** Earliest departure from the node. */
  readonly departs: Int32Array;
  /** Latest start at the node: latest minute of arrival at an end node. */
  readonly latest: Int32Array;
  /** −1: not planned. */
  readonly routeOf: Int32Array;
  readonly optionOf: Int32Array;
  /** Bounds that a visit and one that waits for it, on the same day with another technician, put on each other. */
  readonly notBefore: Int32Array;
  readonly notAfter: Int32Array;
  readonly travel: Int32Array;
  readonly load: Int32Array;
  readonly count: Int32Array;
  /** Overtime and waiting; travel and work: goals S6 and S7. */
  readonly idle: Int32Array;
  readonly work: Int32Array;
};

/** The visits of a route, the first one first. */
export function orderOf(model: RoutingModel, state: Pick<RouteState, 'next'>, route: number): number[] {
  const order: number[] = [];
  const end = model.visitCount + model.routeCount + route;
  for (let node = state.next[model.visitCount + route] as number; node !== end; node = state.next[node] as number)
    order.push(node);
  return order;
}

const NEVER = 0x3fffffff;

export function createState(model: RoutingModel): RouteState {
  const { visitCount: visits, routeCount: routes } = model;
  const nodes = visits + 2 * routes;
  const all = new Int32Array(4 * nodes + 4 * visits + 5 * routes);
  let used = 0;
  const part = (length: number): Int32Array => {
    const view = all.subarray(used, used + length);
    used += length;
    return view;
  };
  const state: RouteState = {
    all,
    next: part(nodes),
    previous: part(nodes),
    departs: part(nodes),
    latest: part(nodes),
    routeOf: part(visits),
    optionOf: part(visits),
    notBefore: part(visits),
    notAfter: part(visits),
    travel: part(routes),
    load: part(routes),
    count: part(routes),
    idle: part(routes),
    work: part(routes),
  };
  state.routeOf.fill(-1);
  state.optionOf.fill(-1);
  state.notAfter.fill(NEVER);
  for (let route = 0; route < routes; route += 1) {
    const start = visits + route;
    const end = start + routes;
    state.next[start] = end;
    state.previous[end] = start;
    refreshRoute(model, state, route);
  }
  for (let stay = model.firstStay; stay < visits; stay += 1) {
    const option = model.optionIndex[stay] as number;
    const end = visits + routes + (model.optionRoute[option] as number);
    insertVisit(model, state, stay, option, state.previous[end] as number);
  }
  return state;
}

export function copyState(from: RouteState, to: RouteState): void {
  to.all.set(from.all);
}

export function placeOfNode(model: RoutingModel, node: number, route: number): number {
  return node < model.visitCount ? (model.visitPlace[node] as number) : (model.routeHome[route] as number);
}

/** Works out times, travel and load of a route anew; false when it can't be driven as it stands. */
export function refreshRoute(model: RoutingModel, state: RouteState, route: number): boolean {
  const { visitCount, placeCount } = model;
  const { next, previous, departs, latest, optionOf } = state;
  const start = visitCount + route;
  const end = start + model.routeCount;
  const home = model.routeHome[route] as number;
  const hasBreaks = model.breakIndex[route] !== model.breakIndex[route + 1];
  let isPossible = true;
  /** Only a way that begins or ends at a visit can make a route impossible, not one between stays and home. */
  let isLastAVisit = false;
  let place = home;
  let left = model.routeStart[route] as number;
  let travelSum = 0;
  let workSum = 0;
  let loadSum = 0;
  let count = 0;
  departs[start] = left;
  for (let node = next[start] as number; node !== end; node = next[node] as number) {
    const there = model.visitPlace[node] as number;
    const travel = model.travel[place * placeCount + there] as number;
    const option = optionOf[node] as number;
    const duration = model.duration[node] as number;
    const from = Math.max(model.optionFrom[option] as number, state.notBefore[node] as number);
    let begins = hasBreaks ? arrivalOf(model, route, left, travel) : left + travel;
    if (node >= model.firstStay) {
      if (isLastAVisit && begins > from) isPossible = false;
      left = Math.max(left, from + duration);
      isLastAVisit = false;
    } else {
      if (begins < from) begins = from;
      const grain = model.optionGrain[option] as number;
      if (hasBreaks || grain > 1) begins = earliestOnGrain(model, route, begins, node, grain);
      if (begins > (model.optionTo[option] as number) || begins > (state.notAfter[node] as number)) isPossible = false;
      left = hasBreaks ? workEnd(model, route, begins, node) : begins + duration;
      isLastAVisit = true;
    }
    departs[node] = left;
    travelSum += travel;
    workSum += duration;
    loadSum += model.load[node] as number;
    count += 1;
    place = there;
  }
  const homeTravel = model.travel[place * placeCount + home] as number;
  travelSum += homeTravel;
  const isHome = hasBreaks ? arrivalOf(model, route, left, homeTravel) : left + homeTravel;
  departs[end] = isHome;
  if (isLastAVisit && isHome > (model.routeEnd[route] as number)) isPossible = false;

  let until = model.routeEnd[route] as number;
  latest[end] = until;
  let onward = home;
  for (let node = previous[end] as number; node !== start; node = previous[node] as number) {
    const here = model.visitPlace[node] as number;
    const travel = model.travel[here * placeCount + onward] as number;
    const duration = model.duration[node] as number;
    const option = optionOf[node] as number;
    if (node >= model.firstStay) {
      until = model.optionTo[option] as number;
    } else {
      const over = hasBreaks ? departureOf(model, route, until, travel) : until - travel;
      until = Math.min(over - duration, model.optionTo[option] as number, state.notAfter[node] as number);
      const grain = model.optionGrain[option] as number;
      if (hasBreaks || grain > 1) until = latestOnGrain(model, route, until, over, node, grain);
    }
    latest[node] = until;
    onward = here;
  }
  state.travel[route] = count === 0 ? 0 : travelSum;
  state.load[route] = loadSum;
  state.count[route] = count;
  if (model.countsTime) {
    state.work[route] = count === 0 ? 0 : travelSum + workSum;
    state.idle[route] = count === 0 || !isPossible ? 0 : countIdle(model, state, route, isHome);
  }
  return isPossible;
}

/** Overtime, and the waiting that is left when every visit starts as late as the next one allows. */
function countIdle(model: RoutingModel, state: RouteState, route: number, isHome: number): number {
  const { visitCount, placeCount } = model;
  const start = visitCount + route;
  const end = start + model.routeCount;
  const overtime = Math.max(0, isHome - (model.routeOrdinaryEnd[route] as number));
  let idle = 0;
  let nextStart = -1;
  let nextPlace = -1;
  for (let node = state.previous[end] as number; node !== start; node = state.previous[node] as number) {
    const place = model.visitPlace[node] as number;
    if (nextStart < 0) {
      nextStart = earliestStartOf(model, state, route, node);
    } else {
      const travel = model.travel[place * placeCount + nextPlace] as number;
      const begins = pressedStart(model, state, route, node, nextStart, travel);
      const leaves = endOf(model, state, route, node, begins);
      const waits = nextStart - leaves - travel - closedMinutes(model, route, leaves, nextStart);
      // From one stay to the next there may be too little time even for the way.
      idle += Math.max(0, waits);
      nextStart = begins;
    }
    nextPlace = place;
  }
  return overtime + idle;
}

/** When a visit of a route as refreshed begins at the earliest. */
export function earliestStartOf(model: RoutingModel, state: RouteState, route: number, node: number): number {
  return node >= model.firstStay
    ? (model.optionFrom[state.optionOf[node] as number] as number)
    : workStart(model, route, state.departs[node] as number, node);
}

/** When it is left that begins at a minute. */
export function endOf(model: RoutingModel, state: RouteState, route: number, node: number, begins: number): number {
  return node >= model.firstStay ? (state.departs[node] as number) : workEnd(model, route, begins, node);
}

/** The latest start of a visit that still lets the next one start when it does; a stay begins when it begins. */
export function pressedStart(
  model: RoutingModel,
  state: RouteState,
  route: number,
  node: number,
  nextStart: number,
  travel: number,
): number {
  const option = state.optionOf[node] as number;
  if (node >= model.firstStay) return model.optionFrom[option] as number;
  const over = departureOf(model, route, nextStart, travel);
  const until = Math.min(model.optionTo[option] as number, state.notAfter[node] as number);
  return latestOnGrain(model, route, until, over, node, model.optionGrain[option] as number);
}

/** Puts a visit behind a node of a route; the caller has judged it possible. */
export function insertVisit(
  model: RoutingModel,
  state: RouteState,
  visit: number,
  option: number,
  behind: number,
): void {
  const route = model.optionRoute[option] as number;
  const following = state.next[behind] as number;
  state.next[behind] = visit;
  state.previous[visit] = behind;
  state.next[visit] = following;
  state.previous[following] = visit;
  state.routeOf[visit] = route;
  state.optionOf[visit] = option;
  const earlier = model.after[visit] as number;
  const earlierRoute = earlier < 0 ? -1 : (state.routeOf[earlier] as number);
  if (earlierRoute >= 0 && earlierRoute !== route && model.routeDay[earlierRoute] === model.routeDay[route]) {
    // Same day, two technicians: the earlier visit must now not slip, and this one not come forward.
    const isOver = state.departs[earlier] as number;
    state.notBefore[visit] = isOver;
    state.notAfter[earlier] = Math.min(
      state.notAfter[earlier] as number,
      workStart(model, earlierRoute, isOver, earlier),
    );
    refreshRoute(model, state, earlierRoute);
  }
  refreshRoute(model, state, route);
}

/** Takes a visit out, and every visit that waits for it; the routes named by the return value's bits are not refreshed yet. */
export function takeOut(
  model: RoutingModel,
  state: RouteState,
  visit: number,
  onTaken: (visit: number, route: number) => void,
): void {
  const route = state.routeOf[visit] as number;
  if (route < 0) return;
  for (let at = model.dependentIndex[visit] as number; at < (model.dependentIndex[visit + 1] as number); at += 1) {
    takeOut(model, state, model.dependent[at] as number, onTaken);
  }
  const before = state.previous[visit] as number;
  const following = state.next[visit] as number;
  state.next[before] = following;
  state.previous[following] = before;
  state.routeOf[visit] = -1;
  state.optionOf[visit] = -1;
  state.notBefore[visit] = 0;
  state.notAfter[visit] = NEVER;
  onTaken(visit, route);
  const earlier = model.after[visit] as number;
  if (earlier >= 0 && (state.routeOf[earlier] as number) >= 0) {
    loosen(model, state, earlier);
    onTaken(-1, state.routeOf[earlier] as number);
  }
}

/** How late a visit may start for those that wait for it on the same day with somebody else. */
function loosen(model: RoutingModel, state: RouteState, visit: number): void {
  let notAfter = NEVER;
  for (let at = model.dependentIndex[visit] as number; at < (model.dependentIndex[visit + 1] as number); at += 1) {
    const waiting = model.dependent[at] as number;
    if ((state.routeOf[waiting] as number) >= 0 && (state.notBefore[waiting] as number) > 0)
      notAfter = Math.min(
        notAfter,
        workStart(model, state.routeOf[visit] as number, state.notBefore[waiting] as number, visit),
      );
  }
  state.notAfter[visit] = notAfter;
}
