/**
 * Whether a plan keeps every hard rule, counts its goals rightly and gives true reasons for what it leaves out.
 * Written apart from the solver and sharing no code with it, so that it can't agree with its mistakes.
 */
import type { Plan } from '../plan.ts';
import type { PlanningProblem } from '../planningProblem.ts';
import { checkRoutes } from './checkRoutes.ts';
import { confirmReason } from './confirmReason.ts';
import { countScore } from './countScore.ts';
import type { Violation } from './violation.ts';

export function checkPlan(problem: PlanningProblem, plan: Plan): readonly Violation[] {
  const found = [...checkRoutes(problem, plan), ...checkBooks(problem, plan)];
  if (found.length > 0) return found;
  for (const { visitId, reasons } of plan.unplanned) {
    if (reasons.length === 0) found.push({ code: 'reason-missing', visitId });
    else if (!reasons.every((reason) => confirmReason(problem, plan, visitId, reason)))
      found.push({ code: 'reason-not-confirmed', visitId });
  }
  const counted = countScore(problem, plan);
  if (counted.some((value, goal) => value !== plan.score[goal])) found.push({ code: 'score-differs', counted });
  return found;
}

function checkBooks(problem: PlanningProblem, plan: Plan): Violation[] {
  const counts = new Map(problem.visits.map((visit) => [visit.visitId, 0]));
  const found: Violation[] = [];
  const listed = [...plan.routes.flatMap((route) => route.stops), ...plan.unplanned];
  for (const { visitId } of listed) {
    const count = counts.get(visitId);
    if (count === undefined) found.push({ code: 'visit-unknown', visitId });
    else counts.set(visitId, count + 1);
  }
  for (const [visitId, count] of counts) {
    if (count === 0) found.push({ code: 'visit-not-accounted', visitId });
    if (count > 1) found.push({ code: 'visit-twice', visitId });
  }
  return found;
}
