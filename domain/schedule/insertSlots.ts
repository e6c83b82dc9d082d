/** Insert: the best slots for one more visit while the customer is on the phone; nothing that is planned changes its order. */
import type { Plan } from './plan.ts';
import type { PlanningProblem } from './planningProblem.ts';
import { listPositions, type Position } from './solver/listPositions.ts';
import { loadAround } from './solver/loadAround.ts';

export type Slot = {
  readonly technicianId: string;
  readonly date: string;
  /** The visit may start between the two. */
  readonly fromMin: number;
  readonly toMin: number;
  readonly extraTravelMin: number;
  /** Goals S2 to S4 and W of this visit there. */
  readonly daysLateKey: number;
  readonly daysOutside: number;
  readonly promisesMoved: number;
  readonly wishesLacking: number;
  /** The stops it would stand between; null: home. */
  readonly afterVisitId: string | null;
  readonly beforeVisitId: string | null;
};

export function insertSlots(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes'>,
  visitId: string,
  count = 10,
): readonly Slot[] {
  const without = plan.routes.map((route) => ({
    ...route,
    stops: route.stops.filter((stop) => stop.visitId !== visitId),
  }));
  const { compiled, loaded } = loadAround(problem, { routes: without });
  const { model, routes, visitNumber } = compiled;
  const visit = visitNumber.get(visitId);
  if (visit === undefined) return [];
  const order = (a: Position, b: Position): number =>
    (model.optionPenalty[a.option] as number) - (model.optionPenalty[b.option] as number) ||
    a.extraTravelMin - b.extraTravelMin ||
    (model.routeDay[a.route] as number) - (model.routeDay[b.route] as number) ||
    a.fromMin - b.fromMin ||
    a.route - b.route;
  const best = listPositions(compiled, loaded.state, visit).toSorted(order).slice(0, count);
  const idOf = (node: number): string | null => [...problem.visits, ...compiled.stays][node]?.visitId ?? null;
  return best.flatMap((position) => {
    const key = routes[position.route];
    return key === undefined
      ? []
      : [
          {
            ...key,
            fromMin: position.fromMin,
            toMin: position.toMin,
            extraTravelMin: position.extraTravelMin,
            daysLateKey: model.optionS2[position.option] as number,
            daysOutside: model.optionS3[position.option] as number,
            promisesMoved: model.optionS4[position.option] as number,
            wishesLacking: model.optionW[position.option] as number,
            afterVisitId: idOf(position.behind),
            beforeVisitId: idOf(loaded.state.next[position.behind] as number),
          },
        ];
  });
}
