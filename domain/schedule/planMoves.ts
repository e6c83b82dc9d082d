/** What accepting a plan would change, visit by visit. */
import { type Placement, type Plan, placementsOf } from './plan.ts';

export type PlanMove = {
  readonly visitId: string;
  /** null: not placed so far. */
  readonly from: Placement | null;
  readonly to: Placement;
};

/** Visits that a plan leaves out are no moves: they stay where they are until a person moves them. */
export function planMoves(current: ReadonlyMap<string, Placement>, plan: Pick<Plan, 'routes'>): readonly PlanMove[] {
  return [...placementsOf(plan)].flatMap(([visitId, to]) => {
    const from = current.get(visitId) ?? null;
    const isSame =
      from !== null && from.technicianId === to.technicianId && from.date === to.date && from.startMin === to.startMin;
    return isSame ? [] : [{ visitId, from, to }];
  });
}
