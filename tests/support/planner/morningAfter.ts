/** Everybody has been told the hour they are planned at; the first technician falls ill on the first day. */
import { type Plan, placementsOf } from '../../../domain/schedule/plan.ts';
import { NO_PIN, type PlanningProblem } from '../../../domain/schedule/planningProblem.ts';

export function morningAfter(problem: PlanningProblem, plan: Plan): PlanningProblem {
  const placements = placementsOf(plan);
  const ill = problem.technicians.find((one) => one.days.some((day) => !day.isAbsent));
  const date = ill?.days.find((day) => !day.isAbsent)?.date;
  return {
    ...problem,
    technicians: problem.technicians.map((technician) => ({
      ...technician,
      days: technician.days.map((day) => (technician === ill && day.date === date ? { ...day, isAbsent: true } : day)),
    })),
    visits: problem.visits.map((visit) => {
      const at = placements.get(visit.visitId);
      const promised = at === undefined ? null : { date: at.date, fromMin: at.startMin - 30, toMin: at.startMin + 60 };
      return visit.state === 'open' ? { ...visit, promised, pin: NO_PIN, mayPause: false } : visit;
    }),
  };
}
