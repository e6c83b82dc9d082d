/**
 * The planner, by the goals it was given: Solomon's published instances against the best lengths known, technicians with
 * skills against another program, invented companies, slots for a caller, repairs, memory, cancel, random problems against
 * the checker and against proven optima. Every plan goes through a checker of its own; one violation fails its line.
 */
import { buildPlan } from '../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../domain/schedule/check/checkPlan.ts';
import { insertSlots } from '../../domain/schedule/insertSlots.ts';
import { compileProblem } from '../../domain/schedule/solver/compileProblem.ts';
import { firstState } from '../../domain/schedule/solver/firstState.ts';
import { createState } from '../../domain/schedule/solver/routeState.ts';
import { compareWithOracle } from '../support/planner/compareWithOracle.ts';
import { judgeRandomPlans } from '../support/planner/judgeRandomPlans.ts';
import { findBrokenPin } from '../support/planner/pins.ts';
import { randomProblem } from '../support/planner/randomProblem.ts';
import type { BenchResult } from './benchResult.ts';
import { companyWeek } from './companyWeek.ts';
import { benchPillac, benchSolomon } from './planner/instances.ts';
import { benchRepair } from './planner/repair.ts';
import { benchCancel, benchMemory, benchRepeats } from './planner/thread.ts';

/** Gaps are to best lengths known; those of G5 to another program's, which is to be reached in the mean. */
export async function benchPlanner(): Promise<readonly BenchResult[]> {
  return [
    // Memory first, while nothing of the others is left lying about.
    await benchMemory(),
    ...benchSolomon(25, 1000, { goal: 'G1', mean: 0, worst: 0 }),
    ...benchSolomon(50, 2000, { goal: 'G2', mean: 0.3, worst: 1.5 }),
    ...benchSolomon(100, 5000, { goal: 'G3', mean: 1.0, worst: 2.5 }),
    ...benchPillac(15_000, { goal: 'G5', mean: 0, worst: 2 }),
    firstPlan(),
    slots(),
    ...benchRepair(),
    ...company(5, 80, 5000),
    ...company(20, 300, 10_000),
    ...company(60, 900, 20_000),
    await benchRepeats(),
    randomPlans(),
    ...(await oracle()),
    await benchCancel(),
    pins(),
  ];
}

function firstPlan(): BenchResult {
  const problem = companyWeek(7, { technicians: 25, visits: 100, days: 1 });
  const times = [1, 2, 3, 4, 5].map((seed) => {
    const begun = performance.now();
    const { model } = compileProblem(problem, { preferred: new Map() });
    firstState(model, createState(model), seed);
    return performance.now() - begun;
  });
  return { name: 'G6 first plan, 100 visits and 25 technicians', ms: Math.min(...times), rawMs: null, goal: 50 };
}

function slots(): BenchResult {
  const problem = companyWeek(11, { technicians: 8, visits: 201, days: 5 });
  const { plan } = buildPlan(problem, { seed: 1, maxRounds: 300 });
  const wanted = problem.visits.slice(0, 100).map(({ visitId }) => visitId);
  const times = wanted
    .map((visitId) => {
      const begun = performance.now();
      insertSlots(problem, plan, visitId, 10);
      return performance.now() - begun;
    })
    .sort((a, b) => a - b);
  return {
    name: 'G7 ten slots for a caller, 200 visits, 95th of 100',
    ms: times[94] ?? Number.NaN,
    rawMs: null,
    goal: 50,
  };
}

function company(technicians: number, visits: number, limitMs: number): readonly BenchResult[] {
  const problem = companyWeek(3, { technicians, visits, days: 5 });
  const before = process.memoryUsage.rss();
  const begun = performance.now();
  const passed = () => performance.now() - begun;
  const { plan } = buildPlan(problem, {
    seed: 1,
    maxRounds: 100_000_000,
    shouldStop: () => passed() >= limitMs * 0.9,
    elapsedShare: () => Math.min(1, passed() / (limitMs * 0.9)),
  });
  const took = passed();
  const megabytes = (process.memoryUsage.rss() - before) / 1_048_576;
  const violations = checkPlan(problem, plan).length;
  const name = `${technicians} technicians, a week, ${visits} visits`;
  process.stdout.write(
    `       ${name}: goals ${plan.score.join(' ')}, ${plan.unplanned.length} left out, ${megabytes.toFixed(0)} MB more\n`,
  );
  return [
    { name: `${name}: hard rules broken`, ms: violations, rawMs: null, goal: 0, unit: '' },
    { name: `${name}: planned in`, ms: took, rawMs: null, goal: limitMs },
  ];
}

function randomPlans(): BenchResult {
  const { faults } = judgeRandomPlans(100_000, 10_000, { fewestVisits: 1, mostVisits: 40 }, 15);
  return { name: 'G11 10 000 random problems: faults', ms: faults.length, rawMs: null, goal: 0, unit: '' };
}

async function oracle(): Promise<readonly BenchResult[]> {
  const found = await compareWithOracle(1000, 200, 2000);
  const wrong = found.below.length + found.violations.length;
  return [
    { name: 'G12 200 small problems: not the proven optimum', ms: found.above.length, rawMs: null, goal: 2, unit: '' },
    { name: 'G12 200 small problems: better than proven, or a rule broken', ms: wrong, rawMs: null, goal: 0, unit: '' },
  ];
}

function pins(): BenchResult {
  let wrong = 0;
  for (let number = 1; number <= 1000; number += 1) {
    const problem = randomProblem(10_000 + number, { fewestVisits: 2, mostVisits: 10, pinShare: 0.7 });
    if (findBrokenPin(problem, buildPlan(problem, { seed: number, maxRounds: 5 }).plan) !== null) wrong += 1;
  }
  return {
    name: 'G14 1 000 pinned plans: a pin changed or a clash not named',
    ms: wrong,
    rawMs: null,
    goal: 0,
    unit: '',
  };
}
