/** The planner against the proven optimum of small random problems. */
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../../domain/schedule/check/checkPlan.ts';
import { openOracle } from './oracle.ts';
import { randomProblem } from './randomProblem.ts';

export type OracleComparison = {
  readonly compared: number;
  readonly equal: number;
  /** Better than the proven optimum: then one of the two is wrong. */
  readonly below: readonly string[];
  readonly above: readonly string[];
  readonly violations: readonly string[];
};

export async function compareWithOracle(from: number, count: number, maxRounds: number): Promise<OracleComparison> {
  const oracle = await openOracle();
  const below: string[] = [];
  const above: string[] = [];
  const violations: string[] = [];
  let equal = 0;
  for (let number = from; number < from + count; number += 1) {
    const problem = randomProblem(number, { fewestVisits: 5, mostVisits: 9, isForOracle: true });
    const { plan } = buildPlan(problem, { seed: number, maxRounds });
    const [violation] = checkPlan(problem, plan);
    if (violation !== undefined) violations.push(`problem ${number}: ${JSON.stringify(violation)}`);
    const optimum = oracle.solve(problem);
    const at = optimum.findIndex((value, goal) => value !== plan.score[goal]);
    if (at < 0) equal += 1;
    else {
      const text = `problem ${number}: ${plan.score.slice(0, 6).join(' ')} against ${optimum.join(' ')}`;
      ((plan.score[at] ?? 0) < (optimum[at] ?? 0) ? below : above).push(text);
    }
  }
  return { compared: count, equal, below, above, violations };
}
