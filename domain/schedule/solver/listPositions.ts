/** Every place in the plan where one more visit fits, the stops that are there keeping their order. */
import type { CompiledProblem } from './compileProblem.ts';
import { arrivalOf, departureOf, earliestOnGrain, latestOnGrain } from './passBreaks.ts';
import { placeOfNode, type RouteState } from './routeState.ts';

export type Position = {
  readonly route: number;
  readonly option: number;
  readonly behind: number;
  readonly fromMin: number;
  readonly toMin: number;
  readonly extraTravelMin: number;
};

export function listPositions({ model }: CompiledProblem, state: RouteState, visit: number): readonly Position[] {
  const found: Position[] = [];
  const taken = new Set<number>();
  const place = model.visitPlace[visit] as number;
  const leg = (from: number, to: number): number => model.travel[from * model.placeCount + to] as number;
  for (
    let option = model.optionIndex[visit] as number;
    option < (model.optionIndex[visit + 1] as number);
    option += 1
  ) {
    const route = model.optionRoute[option] as number;
    const notBefore = earliestAfterOther(model, state, visit, route);
    if (notBefore === null) continue;
    const grain = model.optionGrain[option] as number;
    const isOffGrain = (model.optionOffGrain[option] as number) > 0;
    if (!isOffGrain) taken.clear();
    const last = model.visitCount + model.routeCount + route;
    for (let node = notBefore.node; node !== last; node = state.next[node] as number) {
      const following = state.next[node] as number;
      const before = placeOfNode(model, node, route);
      const behind = placeOfNode(model, following, route);
      const arrives = arrivalOf(model, route, state.departs[node] as number, leg(before, place));
      const earliest = Math.max(arrives, model.optionFrom[option] as number, notBefore.minute);
      const fromMin = earliestOnGrain(model, route, earliest, visit, grain);
      const leaves = departureOf(model, route, state.latest[following] as number, leg(place, behind));
      const toMin = latestOnGrain(model, route, model.optionTo[option] as number, leaves, visit, grain);
      if (fromMin > toMin) continue;
      // The same place to the minute is no other place.
      if (!isOffGrain) taken.add(node);
      else if (taken.has(node)) continue;
      const isOnly = node === model.visitCount + route && following === last;
      const extraTravelMin = leg(before, place) + leg(place, behind) - (isOnly ? 0 : leg(before, behind));
      found.push({ route, option, behind: node, fromMin, toMin, extraTravelMin });
    }
  }
  return found;
}

/** From which node and minute on the route is open to a visit that waits for another; null: not at all. */
function earliestAfterOther(
  model: CompiledProblem['model'],
  state: RouteState,
  visit: number,
  route: number,
): { readonly node: number; readonly minute: number } | null {
  const start = model.visitCount + route;
  const earlier = model.after[visit] as number;
  if (earlier < 0) return { node: start, minute: 0 };
  const earlierRoute = state.routeOf[earlier] as number;
  if (earlierRoute < 0) return null;
  const days = (model.routeDay[route] as number) - (model.routeDay[earlierRoute] as number);
  if (days < 0) return null;
  if (days > 0) return { node: start, minute: 0 };
  return earlierRoute === route
    ? { node: earlier, minute: 0 }
    : { node: start, minute: state.departs[earlier] as number };
}
