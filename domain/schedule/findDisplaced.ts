/** Stops of a plan that break a rule where they are, with the reasons; the others stay as they are. */
import type { Plan, UnplannedVisit } from './plan.ts';
import type { PlanningProblem } from './planningProblem.ts';
import { compileProblem } from './solver/compileProblem.ts';
import { explainLeftOut } from './solver/explainLeftOut.ts';
import { loadAround } from './solver/loadAround.ts';

export function findDisplaced(problem: PlanningProblem, plan: Pick<Plan, 'routes'>): readonly UnplannedVisit[] {
  const displaced = new Set(loadAround(problem, plan).loaded.displaced);
  const compiled = compileProblem(problem);
  return problem.visits
    .filter((visit) => displaced.has(visit.visitId))
    .map((visit) => {
      // Against everything else as it stands, so that each of two that overlap names the other.
      const others = plan.routes.map((route) => ({
        ...route,
        stops: route.stops.filter((stop) => stop.visitId !== visit.visitId),
      }));
      return { visitId: visit.visitId, reasons: explainLeftOut(compiled, others, visit) };
    });
}
