/**
 * Repair: somebody is ill, or a visit ran over. Starts from the plan as it is; what can stay stays, only visits near to
 * those that must move may move as well, and among plans that leave nobody out and miss no deadline the one that keeps
 * the most promises and then moves the fewest visits is preferred to the shortest way.
 */
import { improve, type PlannerControl, type PlannerOutcome } from './buildPlan.ts';
import { type Plan, placementsOf } from './plan.ts';
import { isFixed, type PlanningProblem } from './planningProblem.ts';
import { compileProblem } from './solver/compileProblem.ts';
import { firstState } from './solver/firstState.ts';
import { keepOrder } from './solver/keepOrder.ts';
import { keepPromises } from './solver/keepPromises.ts';
import { loadPlan } from './solver/loadPlan.ts';
import { ontoGrain } from './solver/ontoGrain.ts';
import { readPlan } from './solver/readPlan.ts';

/** Visits around each displaced one that may give way. */
const NEARBY = 12;
/** The search begins in a plan that is good but for what broke. */
const NEARBY_HEAT = 0.1;

export function repairPlan(
  problem: PlanningProblem,
  current: Pick<Plan, 'routes'>,
  control: PlannerControl,
): PlannerOutcome {
  const placements = placementsOf(current);
  const whole = compileProblem(problem, { current: placements });
  const loaded = loadPlan(whole, current);
  const homeless = problem.visits.filter(
    (visit, index) => !isFixed(visit) && (loaded.state.routeOf[index] as number) < 0,
  );
  const movable = new Set(homeless.map((visit) => visit.visitId));
  for (const visit of homeless) {
    for (const visitId of nearestTo(problem, visit.visitId, placements)) movable.add(visitId);
  }
  const compiled = compileProblem(problem, { current: placements, movable });
  const start = firstState(compiled.model, loaded.state, control.seed);
  const found = improve(compiled, start, { ...control, heat: NEARBY_HEAT });
  const ordered = loadPlan(whole, found.plan).state;
  keepOrder(whole, ordered);
  // The search is not thorough; a promise that one simple move would keep is looked for to the end.
  const state = keepPromises(whole, ordered);
  ontoGrain(whole.model, state);
  return { plan: readPlan(whole, state), rounds: found.rounds };
}

/** By travel there and back, among visits on days the displaced one may go to. */
function nearestTo(
  problem: PlanningProblem,
  visitId: string,
  placements: ReadonlyMap<string, { readonly date: string }>,
): readonly string[] {
  const visit = problem.visits.find((one) => one.visitId === visitId);
  if (visit === undefined) return [];
  const number = new Map(problem.places.map((place, index) => [place.placeId, index]));
  const dates = visit.pin.date !== null ? [visit.pin.date] : (visit.windows?.map((window) => window.date) ?? null);
  const apart = (placeId: string): number => {
    const from = number.get(visit.placeId) ?? -1;
    const to = number.get(placeId) ?? -1;
    return (problem.travel.minutes[from]?.[to] ?? 0) + (problem.travel.minutes[to]?.[from] ?? 0);
  };
  return problem.visits
    .filter((other) => {
      const at = placements.get(other.visitId);
      return other.visitId !== visitId && at !== undefined && (dates === null || dates.includes(at.date));
    })
    .map((other) => ({ visitId: other.visitId, apart: apart(other.placeId) }))
    .sort((a, b) => a.apart - b.apart || a.visitId.localeCompare(b.visitId))
    .slice(0, NEARBY)
    .map((other) => other.visitId);
}
