/** The planner's own thread: searches, hands over the best plan now and then, and stops when the flag is raised. */
import { parentPort, workerData } from 'node:worker_threads';
import { buildPlan, type PlannerControl } from '../domain/schedule/buildPlan.ts';
import { explainPlacement } from '../domain/schedule/explainPlacement.ts';
import type { Plan } from '../domain/schedule/plan.ts';
import { repairPlan } from '../domain/schedule/repairPlan.ts';
import { type PlacementNote, type PlanOrder, type PlanReport, REPORT_EVERY_MS } from './operations/planRun.ts';

const order = workerData as PlanOrder;
const startedAt = performance.now();
const flag = new Int32Array(order.cancelFlag);
const heapAtStart = process.memoryUsage().heapUsed + process.memoryUsage().external;
let largest = heapAtStart;
let pending: { readonly read: () => Plan; readonly rounds: number } | null = null;
let reportedAt = Number.NEGATIVE_INFINITY;

const elapsedMs = (): number => performance.now() - startedAt;
const isCancelled = (): boolean => Atomics.load(flag, 0) !== 0;

function report(message: PlanReport): void {
  parentPort?.postMessage(message);
}

function reportPending(): void {
  if (pending === null || elapsedMs() - reportedAt < REPORT_EVERY_MS) return;
  reportedAt = elapsedMs();
  const memory = process.memoryUsage();
  largest = Math.max(largest, memory.heapUsed + memory.external);
  report({ kind: 'better', plan: pending.read(), rounds: pending.rounds, elapsedMs: Math.round(reportedAt) });
  pending = null;
}

const control: PlannerControl = {
  seed: order.seed,
  maxRounds: order.maxRounds,
  shouldStop: () => {
    reportPending();
    return isCancelled();
  },
  ...(order.limitMs === null ? {} : { elapsedShare: () => elapsedMs() / Math.max(1, order.limitMs ?? 1) }),
  onBetter: (read, rounds) => {
    pending = { read, rounds };
    reportPending();
  },
};
const { plan, rounds } = order.isRepair
  ? repairPlan(order.problem, order.current, control)
  : buildPlan(order.problem, control, order.current);

const notes: PlacementNote[] = [];
for (const { visitId } of plan.routes.flatMap((route) => route.stops)) {
  // The plan is there; who cancels does not wait for its reasons.
  if (isCancelled()) break;
  const explained = explainPlacement(order.problem, plan, visitId);
  if (explained !== null) notes.push({ visitId, ground: explained.ground, extraTravelMin: explained.extraTravelMin });
}
const memory = process.memoryUsage();
largest = Math.max(largest, memory.heapUsed + memory.external);
report({
  kind: 'done',
  plan,
  rounds,
  elapsedMs: Math.round(elapsedMs()),
  notes,
  grownBytes: largest - heapAtStart,
});
