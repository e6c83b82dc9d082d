/** The plan as it is, in a state; what breaks a rule in it is left where it is, a stay that others are planned around. */
import { type Plan, placementsOf } from '../plan.ts';
import type { PlanningProblem } from '../planningProblem.ts';
import { type CompiledProblem, compileProblem } from './compileProblem.ts';
import type { StayOn } from './fixedVisits.ts';
import { type LoadedPlan, loadPlan } from './loadPlan.ts';

export function loadAround(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes'>,
): { readonly compiled: CompiledProblem; readonly loaded: LoadedPlan } {
  const placements = placementsOf(plan);
  const displaced = new Set<string>();
  for (;;) {
    const stays = problem.visits.flatMap(({ visitId, placeId, durationMin }): StayOn[] => {
      const at = displaced.has(visitId) ? placements.get(visitId) : undefined;
      return at === undefined
        ? []
        : [{ ...at, visitId, placeId, fromMin: at.startMin, toMin: at.startMin + durationMin }];
    });
    const compiled = compileProblem(problem, { stays });
    const kept = plan.routes.map((route) => ({
      ...route,
      stops: route.stops.filter((stop) => !displaced.has(stop.visitId)),
    }));
    const loaded = loadPlan(compiled, { routes: kept });
    if (loaded.displaced.length === 0) return { compiled, loaded: { ...loaded, displaced: [...displaced] } };
    // Standing there it may push out another; each turn takes at least one, so it ends.
    for (const visitId of loaded.displaced) displaced.add(visitId);
  }
}
