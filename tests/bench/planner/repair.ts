/** Repair after one absence: how long it takes, and whether a promise was given up that one simple move would have kept. */
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../../domain/schedule/check/checkPlan.ts';
import { placementsOf } from '../../../domain/schedule/plan.ts';
import { planMoves } from '../../../domain/schedule/planMoves.ts';
import type { PlanningProblem } from '../../../domain/schedule/planningProblem.ts';
import { repairPlan } from '../../../domain/schedule/repairPlan.ts';
import { findKeepablePromise } from '../../support/planner/keepablePromise.ts';
import { morningAfter } from '../../support/planner/morningAfter.ts';
import { randomProblem } from '../../support/planner/randomProblem.ts';
import type { BenchResult } from '../benchResult.ts';
import { companyWeek } from '../companyWeek.ts';

const LIMIT_MS = 2000;
/** What the last look through all single moves may need on top. */
const SEARCH_SHARE = 0.7;

export function benchRepair(): readonly BenchResult[] {
  const small = Array.from({ length: 200 }, (_, index) =>
    repaired(randomProblem(50_000 + index, { fewestVisits: 6, mostVisits: 14, isForOracle: true }), index + 1, 150),
  );
  const weeks = [21, 22, 23].map((seed) =>
    repaired(companyWeek(seed, { technicians: 6, visits: 70, days: 3 }), seed, null),
  );
  const all = [...small, ...weeks];
  const moved = weeks.map((one) => one.moved).join(', ');
  process.stdout.write(`       G8 visits moved in three weeks of 6 technicians: ${moved}\n`);
  return [
    {
      name: 'G8 repair after one absence: promises one move would keep, rules broken',
      ms: all.filter((one) => !one.isSound).length,
      rawMs: null,
      goal: 0,
      unit: '',
    },
    {
      name: 'G8 repair after one absence, 6 technicians and 70 visits, slowest of 3',
      ms: Math.max(...weeks.map((one) => one.ms)),
      rawMs: null,
      goal: LIMIT_MS,
    },
  ];
}

type Repaired = { readonly isSound: boolean; readonly moved: number; readonly ms: number };

/** `maxRounds` null: the clock sets the limit. */
function repaired(problem: PlanningProblem, seed: number, maxRounds: number | null): Repaired {
  const { plan } = buildPlan(problem, { seed, maxRounds: 300 });
  const after = morningAfter(problem, plan);
  const begun = performance.now();
  const control =
    maxRounds === null
      ? { maxRounds: 100_000_000, elapsedShare: () => (performance.now() - begun) / (LIMIT_MS * SEARCH_SHARE) }
      : { maxRounds };
  const { plan: found } = repairPlan(after, plan, { seed, ...control });
  const ms = performance.now() - begun;
  return {
    isSound: checkPlan(after, found).length === 0 && findKeepablePromise(after, found) === null,
    moved: planMoves(placementsOf(plan), found).length,
    ms,
  };
}
