/** The way through a day with closed spans, forwards and backwards: travel pauses in them, work keeps off them or, if it may, pauses too. */
import { LONGEST_PAUSE_MIN } from '../planningProblem.ts';
import { isOnGrain, onGrainFrom, onGrainUntil } from '../startGrain.ts';
import type { RoutingModel } from './routingModel.ts';

/** Earliest arrival when leaving at `departs`. */
export function arrivalOf(model: RoutingModel, route: number, departs: number, travel: number): number {
  // No way, no time: who is left within a closed span need not wait for its end to be there.
  if (travel === 0) return departs;
  let arrives = departs + travel;
  const end = model.breakIndex[route + 1] as number;
  for (let at = model.breakIndex[route] as number; at < end; at += 1) {
    const from = model.breakFrom[at] as number;
    if (from >= arrives) break;
    const to = model.breakTo[at] as number;
    if (to > departs) arrives += to - Math.max(from, departs);
  }
  return arrives;
}

/** Earliest start, not before `from`, that keeps the work off the closed spans it may not pause for. */
export function earliestStart(model: RoutingModel, route: number, from: number, visit: number): number {
  const duration = model.duration[visit] as number;
  const mayPause = model.mayPause[visit] === 1;
  let start = from;
  let length = duration;
  const end = model.breakIndex[route + 1] as number;
  for (let at = model.breakIndex[route] as number; at < end; at += 1) {
    const closes = model.breakFrom[at] as number;
    const opens = model.breakTo[at] as number;
    if (start >= opens || start + length <= closes) continue;
    if (mayPause && start < closes && opens - closes <= LONGEST_PAUSE_MIN) {
      length += opens - closes;
    } else {
      start = opens;
      length = duration;
    }
  }
  return start;
}

/** As `earliestStart`, on a grain. */
export function earliestOnGrain(
  model: RoutingModel,
  route: number,
  from: number,
  visit: number,
  grain: number,
): number {
  let start = earliestStart(model, route, from, visit);
  while (grain > 1 && !isOnGrain(start, grain)) start = earliestStart(model, route, onGrainFrom(start, grain), visit);
  return start;
}

/** When work is over that starts where `earliestStart` or `latestStart` allow. */
export function workEnd(model: RoutingModel, route: number, start: number, visit: number): number {
  const duration = model.duration[visit] as number;
  return model.mayPause[visit] === 1 ? arrivalOf(model, route, start, duration) : start + duration;
}

/** When work was begun that is over at `end`. */
export function workStart(model: RoutingModel, route: number, end: number, visit: number): number {
  const duration = model.duration[visit] as number;
  return model.mayPause[visit] === 1 ? departureOf(model, route, end, duration) : end - duration;
}

/** Latest departure to arrive by `arrives`. */
export function departureOf(model: RoutingModel, route: number, arrives: number, travel: number): number {
  let departs = arrives - travel;
  const first = model.breakIndex[route] as number;
  for (let at = (model.breakIndex[route + 1] as number) - 1; at >= first; at -= 1) {
    const to = model.breakTo[at] as number;
    if (to <= departs) break;
    const from = model.breakFrom[at] as number;
    if (from < arrives) departs -= Math.min(to, arrives) - from;
  }
  return departs;
}

/** Latest start, not after `until` and over by `over`, that keeps the work off the closed spans it may not pause for. */
export function latestStart(model: RoutingModel, route: number, until: number, over: number, visit: number): number {
  const duration = model.duration[visit] as number;
  const mayPause = model.mayPause[visit] === 1;
  let start = Math.min(until, mayPause ? departureOf(model, route, over, duration) : over - duration);
  const first = model.breakIndex[route] as number;
  for (let at = (model.breakIndex[route + 1] as number) - 1; at >= first; at -= 1) {
    const closes = model.breakFrom[at] as number;
    const opens = model.breakTo[at] as number;
    if (start >= opens || workEnd(model, route, start, visit) <= closes) continue;
    if (!mayPause) start = closes - duration;
    else if (opens - closes > LONGEST_PAUSE_MIN) start = departureOf(model, route, closes, duration);
    else if (start >= closes) start = closes - 1;
  }
  return start;
}

/** As `latestStart`, on a grain; what it gives before midnight is no start at all. */
export function latestOnGrain(
  model: RoutingModel,
  route: number,
  until: number,
  over: number,
  visit: number,
  grain: number,
): number {
  let start = latestStart(model, route, until, over, visit);
  while (grain > 1 && start > 0 && !isOnGrain(start, grain))
    start = latestStart(model, route, onGrainUntil(start, grain), over, visit);
  return start;
}

export function closedMinutes(model: RoutingModel, route: number, from: number, to: number): number {
  let closed = 0;
  const end = model.breakIndex[route + 1] as number;
  for (let at = model.breakIndex[route] as number; at < end; at += 1) {
    closed += Math.max(0, Math.min(to, model.breakTo[at] as number) - Math.max(from, model.breakFrom[at] as number));
  }
  return closed;
}
