/**
 * Among visits that stay with their technician on their day, the order costs the search nothing but travel: it may turn a morning
 * about for a minute. Here each day is brought back to the order in which most visits keep the start they have. Who goes on which
 * day stays as found, and so do the goals before travel.
 */
import type { CompiledProblem } from './compileProblem.ts';
import { keptOf, startsAt } from './readPlan.ts';
import { earliestStartOf, orderOf, type RouteState, refreshRoute } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';

/** Changes `state`. */
export function keepOrder(compiled: CompiledProblem, state: RouteState): void {
  for (let route = 0; route < compiled.model.routeCount; route += 1) keepOrderOf(compiled, state, route);
}

function keepOrderOf(compiled: CompiledProblem, state: RouteState, route: number): void {
  const { model } = compiled;
  let best: readonly number[] = orderOf(model, state, route);
  const kept = new Map(best.map((node) => [node, startNow(compiled, state, route, node)]));
  let fewest = movedIn(compiled, state, route, best, kept);
  const take = (order: readonly number[]): boolean => {
    if (!isInSequence(model, order) || !link(model, state, route, order)) return false;
    const moved = movedIn(compiled, state, route, order, kept);
    if (moved >= fewest) return false;
    best = order;
    fewest = moved;
    return true;
  };
  if (fewest > 0 && best.length > 1) {
    const asItWas = weave(compiled, state, route, kept);
    if (asItWas !== null) take(asItWas);
  }
  for (let isBetter = fewest > 0 && best.length > 1; isBetter && fewest > 0; ) {
    const now = best;
    isBetter = now.some((node) => {
      const others = now.filter((one) => one !== node);
      return now.some((_, at) => take(insertedAt(others, node, at)));
    });
  }
  link(model, state, route, best);
}

/** A stay is where it is. */
function startNow(compiled: CompiledProblem, state: RouteState, route: number, node: number): number | null {
  const { model } = compiled;
  return node >= model.firstStay ? earliestStartOf(model, state, route, node) : keptOf(compiled, route, node);
}

/** Those that stay in the order of their starts, each newcomer where it moves the fewest of them; null: that can't be driven. */
function weave(
  compiled: CompiledProblem,
  state: RouteState,
  route: number,
  kept: ReadonlyMap<number, number | null>,
): readonly number[] | null {
  const { model } = compiled;
  const nodes = [...kept.keys()];
  const startOf = (node: number): number | null => kept.get(node) ?? null;
  let order: readonly number[] = nodes
    .filter((node) => startOf(node) !== null)
    .sort((a, b) => (startOf(a) ?? 0) - (startOf(b) ?? 0));
  for (const node of nodes.filter((one) => startOf(one) === null)) {
    const before = order;
    const possible = Array.from({ length: before.length + 1 }, (_, at) => insertedAt(before, node, at)).flatMap(
      (one) =>
        link(model, state, route, one)
          ? [{ one, moved: movedIn(compiled, state, route, one, kept), travel: state.travel[route] as number }]
          : [],
    );
    const [best] = possible.sort((a, b) => a.moved - b.moved || a.travel - b.travel);
    if (best === undefined) return null;
    order = best.one;
  }
  return order;
}

function insertedAt(order: readonly number[], node: number, at: number): readonly number[] {
  return [...order.slice(0, at), node, ...order.slice(at)];
}

/** Visits of that order which would not keep the start they have. */
function movedIn(
  compiled: CompiledProblem,
  state: RouteState,
  route: number,
  order: readonly number[],
  kept: ReadonlyMap<number, number | null>,
): number {
  const starts = startsAt(compiled, state, route, order);
  return order.filter((node, at) => {
    const start = kept.get(node) ?? null;
    return start !== null && starts[at] !== start;
  }).length;
}

/** A visit that waits for another of this day still comes behind it, and stays keep their order. */
function isInSequence(model: RoutingModel, order: readonly number[]): boolean {
  const stays = order.filter((node) => node >= model.firstStay);
  if (stays.some((stay, at) => at > 0 && stay < (stays[at - 1] ?? stay))) return false;
  return order.every((node, at) => {
    const earlier = model.after[node] as number;
    return earlier < 0 || order.indexOf(earlier) < at;
  });
}

/** false: the day can't be driven in that order. */
function link(model: RoutingModel, state: RouteState, route: number, order: readonly number[]): boolean {
  const start = model.visitCount + route;
  const chain = [start, ...order, start + model.routeCount];
  for (let at = 1; at < chain.length; at += 1) {
    const [before, node] = [chain[at - 1] as number, chain[at] as number];
    state.next[before] = node;
    state.previous[node] = before;
  }
  return refreshRoute(model, state, route);
}
