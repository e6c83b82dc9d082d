/**
 * The best place for a visit in one route: each position is judged in constant time from the earliest departure of the stop
 * before and the latest start of the one after.
 */

import { onGrainFrom } from '../startGrain.ts';
import { arrivalOf, earliestOnGrain, workEnd } from './passBreaks.ts';
import type { RouteState } from './routeState.ts';
import { isAlsoToTheMinute, type RoutingModel } from './routingModel.ts';

export type Insertion = {
  /** Added travel plus penalties of the option; infinite: no place. */
  cost: number;
  option: number;
  behind: number;
  /** Positions looked at so far: the search's measure of its own work. */
  judged: number;
  /** Positions until one is passed over, for a greedy insertion that does not always take the same place; 0: never. */
  blinkIn: number;
  blinkEvery: () => number;
  /** Wished grains are passed over where there is a choice. */
  readonly isToTheMinute: boolean;
};

export function newInsertion(isToTheMinute = false): Insertion {
  return {
    cost: Number.POSITIVE_INFINITY,
    option: -1,
    behind: -1,
    judged: 0,
    blinkIn: 0,
    blinkEvery: () => 0,
    isToTheMinute,
  };
}

/** Where the options of a visit for one route end, from the first of them. */
export function endOfRouteOptions(model: RoutingModel, visit: number, first: number): number {
  const end = model.optionIndex[visit + 1] as number;
  const route = model.optionRoute[first] as number;
  let at = first + 1;
  while (at < end && model.optionRoute[at] === route) at += 1;
  return at;
}

/**
 * Improves `best` by any cheaper place that the options from first to end, all of one route, allow; where a node is named,
 * only places behind it, and of those the ones up to another that is named.
 */
export function improveInsertion(
  model: RoutingModel,
  state: RouteState,
  visit: number,
  first: number,
  end: number,
  best: Insertion,
  notAheadOf = -1,
  notBehind = -1,
): void {
  const route = model.optionRoute[first] as number;
  const load = (state.load[route] as number) + (model.load[visit] as number);
  if (load > (model.routeCapacity[route] as number)) return;
  const { visitCount, placeCount, travel, visitPlace } = model;
  const { next, departs, latest } = state;
  const start = visitCount + route;
  const last = start + model.routeCount;
  const stopAt = notBehind < 0 ? last : (next[notBehind] as number);
  const home = model.routeHome[route] as number;
  const place = visitPlace[visit] as number;
  const duration = model.duration[visit] as number;
  const toRow = place * placeCount;
  const hasBreaks = model.breakIndex[route] !== model.breakIndex[route + 1];

  let firstNode = notAheadOf < 0 ? start : notAheadOf;
  let notBefore = 0;
  const earlier = model.after[visit] as number;
  if (earlier >= 0) {
    const earlierRoute = state.routeOf[earlier] as number;
    if (earlierRoute < 0) return;
    const days = (model.routeDay[route] as number) - (model.routeDay[earlierRoute] as number);
    if (days < 0) return;
    if (days === 0 && earlierRoute === route) firstNode = notAheadOf < 0 ? earlier : notAheadOf;
    else if (days === 0) notBefore = departs[earlier] as number;
  }

  for (let option = first; option < end; option += 1) {
    const penalty = model.optionPenalty[option] as number;
    const isOffGrain = (model.optionOffGrain[option] as number) > 0;
    if (best.isToTheMinute && isAlsoToTheMinute(model, option)) continue;
    // To the minute only where nothing on the grain is nearer.
    if (penalty >= best.cost + (isOffGrain ? 0 : 1e6)) continue;
    const grain = model.optionGrain[option] as number;
    const from = Math.max(model.optionFrom[option] as number, notBefore);
    const to = model.optionTo[option] as number;
    let node = firstNode;
    let nodePlace = node < visitCount ? (visitPlace[node] as number) : home;
    while (node !== stopAt) {
      const left = departs[node] as number;
      if (left > to) break;
      const following = next[node] as number;
      const followingPlace = following < visitCount ? (visitPlace[following] as number) : home;
      best.judged += 1;
      const there = travel[nodePlace * placeCount + place] as number;
      const onward = travel[toRow + followingPlace] as number;
      const between =
        node === start && following === last ? 0 : (travel[nodePlace * placeCount + followingPlace] as number);
      const cost = penalty + there + onward - between;
      if (cost < best.cost) {
        let isBlinked = false;
        if (best.blinkIn > 0) {
          best.blinkIn -= 1;
          if (best.blinkIn === 0) {
            isBlinked = true;
            best.blinkIn = best.blinkEvery();
          }
        }
        if (!isBlinked) {
          let begins: number;
          let arrives: number;
          if (hasBreaks) {
            begins = arrivalOf(model, route, left, there);
            if (begins < from) begins = from;
            begins = earliestOnGrain(model, route, begins, visit, grain);
            arrives = arrivalOf(model, route, workEnd(model, route, begins, visit), onward);
          } else {
            begins = left + there;
            if (begins < from) begins = from;
            if (grain > 1) begins = onGrainFrom(begins, grain);
            arrives = begins + duration + onward;
          }
          if (begins <= to && arrives <= (latest[following] as number)) {
            best.cost = cost;
            best.option = option;
            best.behind = node;
          }
        }
      }
      node = following;
      nodePlace = followingPlace;
    }
  }
}
