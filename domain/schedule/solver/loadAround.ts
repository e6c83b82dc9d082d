/** The plan as it is, in a state; what breaks a rule in it is left where it is, its time closed to others. */
import { type Plan, placementsOf } from '../plan.ts';
import type { PlanningProblem } from '../planningProblem.ts';
import { type ClosedTime, type CompiledProblem, compileProblem } from './compileProblem.ts';
import { type LoadedPlan, loadPlan } from './loadPlan.ts';

export function loadAround(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes'>,
): { readonly compiled: CompiledProblem; readonly loaded: LoadedPlan } {
  const durations = new Map(problem.visits.map((visit) => [visit.visitId, visit.durationMin]));
  const placements = placementsOf(plan);
  const displaced = new Set<string>();
  for (;;) {
    const closed = [...displaced].flatMap((visitId): ClosedTime[] => {
      const at = placements.get(visitId);
      return at === undefined
        ? []
        : [{ ...at, fromMin: at.startMin, toMin: at.startMin + (durations.get(visitId) ?? 0) }];
    });
    const compiled = compileProblem(problem, { closed });
    const kept = plan.routes.map((route) => ({
      ...route,
      stops: route.stops.filter((stop) => !displaced.has(stop.visitId)),
    }));
    const loaded = loadPlan(compiled, { routes: kept });
    if (loaded.displaced.length === 0) return { compiled, loaded: { ...loaded, displaced: [...displaced] } };
    // Closing its time may push out another; each turn takes at least one, so it ends.
    for (const visitId of loaded.displaced) displaced.add(visitId);
  }
}
