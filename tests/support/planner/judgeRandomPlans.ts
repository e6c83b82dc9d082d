/** Plans of random problems against the checker: what is wrong with the plan of one number, if anything. */
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../../domain/schedule/check/checkPlan.ts';
import { type ProblemShape, randomProblem } from './randomProblem.ts';

export type RandomPlanCount = {
  readonly faults: readonly string[];
  readonly planned: number;
  readonly leftOut: ReadonlyMap<string, number>;
};

export function judgeRandomPlans(from: number, count: number, shape: ProblemShape, maxRounds: number): RandomPlanCount {
  const faults: string[] = [];
  const leftOut = new Map<string, number>();
  let planned = 0;
  for (let number = from; number < from + count; number += 1) {
    const problem = randomProblem(number, shape);
    try {
      const { plan } = buildPlan(problem, { seed: number, maxRounds });
      const [violation] = checkPlan(problem, plan);
      if (violation !== undefined) faults.push(`problem ${number}: ${JSON.stringify(violation)}`);
      planned += plan.routes.reduce((sum, route) => sum + route.stops.length, 0);
      for (const reason of plan.unplanned.flatMap((one) => one.reasons))
        leftOut.set(reason.code, (leftOut.get(reason.code) ?? 0) + 1);
    } catch (error) {
      faults.push(`problem ${number}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    }
  }
  return { faults, planned, leftOut };
}
