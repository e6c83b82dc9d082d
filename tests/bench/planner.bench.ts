/**
 * The planner: Solomon's published instances against the best lengths known (see data/README.md), invented companies, slots
 * for a caller, random problems against the checker and against proven optima. Every plan goes through the checker; one
 * violation fails its line. Technician instances are read from a folder outside the repository, and missed plainly without.
 */
import { buildPlan } from '../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../domain/schedule/check/checkPlan.ts';
import { insertSlots } from '../../domain/schedule/insertSlots.ts';
import { compileProblem } from '../../domain/schedule/solver/compileProblem.ts';
import { firstState } from '../../domain/schedule/solver/firstState.ts';
import { createState } from '../../domain/schedule/solver/routeState.ts';
import { search } from '../../domain/schedule/solver/search.ts';
import { compareWithOracle } from '../support/planner/compareWithOracle.ts';
import { judgeRandomPlans } from '../support/planner/judgeRandomPlans.ts';
import { checkedLength, routesOf, routingModelOf } from '../support/planner/routingInstance.ts';
import { readSolomon, SOLOMON_BEST_TENTHS, SOLOMON_NAMES, type SolomonSize } from '../support/planner/solomon.ts';
import type { BenchResult } from './benchResult.ts';
import { companyWeek } from './companyWeek.ts';

const SEEDS = [1, 2, 3, 4, 5].slice(0, Number(process.env['LIGHTOFF_BENCH_SEEDS'] ?? 5));

export async function benchPlanner(): Promise<readonly BenchResult[]> {
  return [
    ...solomon(25, 1000, { goal: 'G1', mean: 0, worst: 0 }),
    ...solomon(50, 2000, { goal: 'G2', mean: 0.3, worst: 1.5 }),
    ...solomon(100, 5000, { goal: 'G3', mean: 1.0, worst: 2.5 }),
    firstPlan(),
    slots(),
    ...company(5, 80, 5000),
    ...company(20, 300, 10_000),
    ...company(60, 900, 20_000),
    randomPlans(),
    ...(await oracle()),
  ];
}

function solomon(
  size: SolomonSize,
  limitMs: number,
  wanted: { readonly goal: string; readonly mean: number; readonly worst: number },
): readonly BenchResult[] {
  const gaps = SOLOMON_NAMES.flatMap((name) =>
    SEEDS.map((seed) => {
      const instance = readSolomon(name, size);
      const model = routingModelOf(instance);
      const begun = performance.now();
      const passed = () => performance.now() - begun;
      const { best } = search(model, firstState(model, createState(model), seed), {
        seed,
        maxRounds: 100_000_000,
        shouldStop: () => passed() >= limitMs,
        elapsedShare: () => Math.min(1, passed() / limitMs),
      });
      const length = checkedLength(instance, routesOf(model, best.next));
      // A plan that breaks a rule has no length.
      return length === null ? Number.POSITIVE_INFINITY : (100 * length) / SOLOMON_BEST_TENTHS[name][size] - 100;
    }),
  );
  const name = `${wanted.goal} Solomon, ${size} customers in ${limitMs / 1000} s, ${SEEDS.length} seeds`;
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  return [
    { name: `${name}: mean gap`, ms: mean, rawMs: null, goal: wanted.mean, unit: '%' },
    { name: `${name}: worst gap`, ms: Math.max(...gaps), rawMs: null, goal: wanted.worst, unit: '%' },
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
  const wanted = problem.visits.slice(0, 40).map(({ visitId }) => visitId);
  const times = wanted
    .map((visitId) => {
      const begun = performance.now();
      insertSlots(problem, plan, visitId, 10);
      return performance.now() - begun;
    })
    .sort((a, b) => a - b);
  return {
    name: 'G7 ten slots for a caller, 200 visits, 95th of 100',
    ms: times[37] ?? Number.NaN,
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
