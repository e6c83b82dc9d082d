/** The way through a day with closed spans, forwards and backwards: travel pauses in them, work does not touch them. */
import type { RoutingModel } from './routingModel.ts';

/** Earliest arrival when leaving at `departs`. */
export function arrivalOf(model: RoutingModel, route: number, departs: number, travel: number): number {
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

/** Earliest start, not before `from`, that keeps the work off the closed spans. */
export function earliestStart(model: RoutingModel, route: number, from: number, duration: number): number {
  let start = from;
  const end = model.breakIndex[route + 1] as number;
  for (let at = model.breakIndex[route] as number; at < end; at += 1) {
    if (start < (model.breakTo[at] as number) && start + duration > (model.breakFrom[at] as number))
      start = model.breakTo[at] as number;
  }
  return start;
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

/** Latest start, not after `to`, that keeps the work off the closed spans. */
export function latestStart(model: RoutingModel, route: number, to: number, duration: number): number {
  let start = to;
  const first = model.breakIndex[route] as number;
  for (let at = (model.breakIndex[route + 1] as number) - 1; at >= first; at -= 1) {
    if (start < (model.breakTo[at] as number) && start + duration > (model.breakFrom[at] as number))
      start = (model.breakFrom[at] as number) - duration;
  }
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
