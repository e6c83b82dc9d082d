/** The planner's own thread: how soon it hears a cancel, how much memory it takes, and whether it repeats itself to the byte. */
import { createHash } from 'node:crypto';
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import type { PlanOrder } from '../../../electron/operations/planRun.ts';
import { randomProblem } from '../../support/planner/randomProblem.ts';
import { runPlanWorker } from '../../support/planner/runPlanWorker.ts';
import type { BenchResult } from '../benchResult.ts';
import { companyWeek } from '../companyWeek.ts';

const NO_PLAN = { routes: [] };
const MEGABYTE = 1_048_576;

function order(problem: PlanOrder['problem'], rest: Partial<PlanOrder>): Omit<PlanOrder, 'cancelFlag'> {
  return { problem, isRepair: false, current: NO_PLAN, seed: 1, maxRounds: 100_000_000, limitMs: 60_000, ...rest };
}

export async function benchCancel(): Promise<BenchResult> {
  const problem = companyWeek(3, { technicians: 20, visits: 300, days: 5 });
  const times: number[] = [];
  for (let time = 0; time < 5; time += 1) {
    const run = runPlanWorker(order(problem, { seed: time + 1 }));
    await run.firstPlan;
    await new Promise((resolve) => setTimeout(resolve, 500 + time * 37));
    const begun = performance.now();
    run.cancel();
    await run.done;
    times.push(performance.now() - begun);
  }
  return {
    name: 'G13 cancel with 20 technicians and 300 visits, until the plan is there, worst of 5',
    ms: Math.max(...times),
    rawMs: null,
    goal: 100,
  };
}

/** The process's peak while the thread searches, against its peak while the same thread only takes the problem in. */
export async function benchMemory(): Promise<BenchResult> {
  const problem = companyWeek(11, { technicians: 8, visits: 200, days: 5 });
  const idle = await largestRss(order(problem, { maxRounds: 0, limitMs: null }));
  const busy = await largestRss(order(problem, { limitMs: 5000 }));
  return {
    name: 'G9 memory of the thread above idle, 200 visits',
    ms: Math.max(0, busy - idle) / MEGABYTE,
    rawMs: null,
    goal: 60,
    unit: 'MB',
  };
}

async function largestRss(ordered: Omit<PlanOrder, 'cancelFlag'>): Promise<number> {
  let largest = 0;
  const look = () => {
    largest = Math.max(largest, process.memoryUsage.rss());
  };
  const timer = setInterval(look, 20);
  await runPlanWorker(ordered).done;
  look();
  clearInterval(timer);
  return largest;
}

/** Once here, once in a thread of its own. The digest is there to be held against another machine's. */
export async function benchRepeats(): Promise<BenchResult> {
  const digest = createHash('sha256');
  let different = 0;
  for (let seed = 1; seed <= 50; seed += 1) {
    const problem = randomProblem(70_000 + seed, { fewestVisits: 10, mostVisits: 40 });
    const here = JSON.stringify(buildPlan(problem, { seed, maxRounds: 60 }).plan);
    const { plan } = await runPlanWorker(order(problem, { seed, maxRounds: 60, limitMs: null })).done;
    if (JSON.stringify(plan) !== here) different += 1;
    digest.update(here);
  }
  process.stdout.write(`       G10 digest of all 50 plans: ${digest.digest('hex').slice(0, 16)}\n`);
  return { name: 'G10 50 seeds, twice: plans that differ', ms: different, rawMs: null, goal: 0, unit: '' };
}
