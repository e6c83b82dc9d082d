/** Whether a plan keeps every pinned field, and names what stands against a pin it could not keep. */
import { type Plan, placementsOf } from '../../../domain/schedule/plan.ts';
import type { PlanningProblem } from '../../../domain/schedule/planningProblem.ts';

/** null: nothing wrong. */
export function findBrokenPin(problem: PlanningProblem, plan: Plan): string | null {
  const placements = placementsOf(plan);
  const leftOut = new Map(plan.unplanned.map((one) => [one.visitId, one.reasons]));
  for (const { visitId, pin } of problem.visits) {
    const { technicianId, date, startMin } = pin;
    if (technicianId === null && date === null && startMin === null) continue;
    const placed = placements.get(visitId);
    if (placed === undefined) {
      const reasons = leftOut.get(visitId) ?? [];
      if (reasons.length === 0) return `${visitId} is left out without a reason`;
      if (reasons.some((reason) => reason.code === 'no-gap'))
        return `${visitId} does not name what its pin clashes with`;
      continue;
    }
    if (technicianId !== null && technicianId !== placed.technicianId) return `${visitId} has another technician`;
    if (date !== null && date !== placed.date) return `${visitId} is on another day`;
    if (startMin !== null && startMin !== placed.startMin) return `${visitId} starts at another minute`;
  }
  return null;
}
