/** The planner in its own thread, as the core starts it. */
import { Worker } from 'node:worker_threads';
import type { PlanOrder, PlanReport } from '../../../electron/operations/planRun.ts';
import { threadFile } from '../threads.ts';

export type DoneReport = Extract<PlanReport, { readonly kind: 'done' }>;

export type PlanWorkerRun = {
  readonly firstPlan: Promise<void>;
  readonly done: Promise<DoneReport>;
  readonly cancel: () => void;
};

export function runPlanWorker(order: Omit<PlanOrder, 'cancelFlag'>): PlanWorkerRun {
  const cancelFlag = new SharedArrayBuffer(4);
  const worker = new Worker(threadFile('planWorker'), {
    workerData: { ...order, cancelFlag } satisfies PlanOrder,
  });
  const reported = Promise.withResolvers<void>();
  const done = new Promise<DoneReport>((resolve, reject) => {
    worker.on('message', (report: PlanReport) => {
      reported.resolve();
      if (report.kind === 'done') resolve(report);
    });
    worker.on('error', reject);
    worker.on('exit', (code) => reject(new Error(`the planner's thread ended with ${code}`)));
  });
  return {
    firstPlan: Promise.race([reported.promise, done.then(() => undefined)]),
    done,
    cancel: () => void Atomics.store(new Int32Array(cancelFlag), 0, 1),
  };
}
