/** Why a visit is not in the plan: the reasons, and each technician's day with what stands in the way there. */
import { type DayVerdict, judgeDays } from './judgeDays.ts';
import type { Plan } from './plan.ts';
import type { PlanningProblem } from './planningProblem.ts';
import { compileProblem } from './solver/compileProblem.ts';
import { explainLeftOut } from './solver/explainLeftOut.ts';
import type { UnplannedReason } from './unplannedReason.ts';

export type UnplannedExplained = {
  readonly reasons: readonly UnplannedReason[];
  readonly days: readonly DayVerdict[];
};

/** null: no such visit, or it is in the plan. */
export function explainUnplanned(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes'>,
  visitId: string,
): UnplannedExplained | null {
  const visit = problem.visits.find((one) => one.visitId === visitId);
  const isPlanned = plan.routes.some((route) => route.stops.some((stop) => stop.visitId === visitId));
  if (visit === undefined || isPlanned) return null;
  return {
    reasons: explainLeftOut(compileProblem(problem), plan.routes, visit),
    days: judgeDays(problem, plan, visitId),
  };
}
