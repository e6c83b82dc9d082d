/** The planner's threads and the proposals they work on; kept in memory only, since a proposal is nothing until accepted. */
import { Worker } from 'node:worker_threads';
import type { Plan } from '../../domain/schedule/plan.ts';
import type { PlacementNote, PlanOrder, PlanReport } from './planRun.ts';

export type PlanRunState = 'running' | 'done' | 'stopped' | 'failed';

export type PlanRun<B> = {
  readonly proposalId: string;
  /** What it was made from. */
  readonly basis: B;
  readonly limitMs: number;
  readonly state: PlanRunState;
  readonly plan: Plan | null;
  readonly rounds: number;
  readonly elapsedMs: number;
  readonly notes: readonly PlacementNote[];
};

export type PlanRuns<B, D> = {
  /** `onReport` is called with every better plan and at the end. */
  readonly start: (
    basis: B,
    limitMs: number,
    order: Omit<PlanOrder, 'cancelFlag'>,
    onReport: () => void,
  ) => { readonly proposalId: string };
  readonly find: (proposalId: string) => PlanRun<B> | undefined;
  readonly cancel: (proposalId: string) => void;
  /** It is no proposal any more; what was done is kept to be taken back. */
  readonly accepted: (proposalId: string, done: D) => void;
  readonly findAccepted: (proposalId: string) => D | undefined;
  readonly forget: (proposalId: string) => void;
  /** The store goes away, or another one comes. */
  readonly stopAll: () => void;
};

/** Proposals kept; the oldest goes when there are more. */
const KEPT = 8;
/** A thread that does not answer the flag by then is ended: its last plan is kept. */
const STOP_WITHIN_MS = 1000;

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
type Held<B> = Mutable<PlanRun<B>> & { worker: Worker | null; readonly flag: Int32Array; stopping: boolean };

export function createPlanRuns<B, D>(workerUrl: URL, logFault: (error: unknown) => void): PlanRuns<B, D> {
  const runs = new Map<string, Held<B>>();
  const accepted = new Map<string, D>();

  function end(run: Held<B>, state: PlanRunState): void {
    run.state = state;
    run.worker = null;
  }

  function stop(run: Held<B>): void {
    if (run.worker === null) return;
    run.stopping = true;
    Atomics.store(run.flag, 0, 1);
    const { worker } = run;
    const timer = setTimeout(() => void worker.terminate(), STOP_WITHIN_MS);
    timer.unref();
    worker.once('exit', () => clearTimeout(timer));
  }

  return {
    start(basis, limitMs, order, onReport) {
      for (const old of [...runs.values()].slice(0, Math.max(0, runs.size - KEPT + 1))) {
        stop(old);
        runs.delete(old.proposalId);
      }
      const cancelFlag = new SharedArrayBuffer(4);
      const worker = new Worker(workerUrl, { workerData: { ...order, cancelFlag } satisfies PlanOrder });
      const run: Held<B> = {
        proposalId: crypto.randomUUID(),
        basis,
        limitMs,
        state: 'running',
        plan: null,
        rounds: 0,
        elapsedMs: 0,
        notes: [],
        worker,
        flag: new Int32Array(cancelFlag),
        stopping: false,
      };
      runs.set(run.proposalId, run);
      worker.on('message', (report: PlanReport) => {
        run.plan = report.plan;
        run.rounds = report.rounds;
        run.elapsedMs = report.elapsedMs;
        if (report.kind === 'done') {
          run.notes = report.notes;
          end(run, run.stopping ? 'stopped' : 'done');
        }
        onReport();
      });
      worker.on('error', (error) => {
        logFault(error);
        end(run, 'failed');
        onReport();
      });
      worker.on('exit', () => {
        if (run.state !== 'running') return;
        end(run, run.plan === null ? 'failed' : 'stopped');
        onReport();
      });
      worker.unref();
      return { proposalId: run.proposalId };
    },
    find: (proposalId) => runs.get(proposalId),
    cancel(proposalId) {
      const run = runs.get(proposalId);
      if (run !== undefined) stop(run);
    },
    accepted(proposalId, done) {
      runs.delete(proposalId);
      accepted.set(proposalId, done);
      for (const old of [...accepted.keys()].slice(0, -KEPT)) accepted.delete(old);
    },
    findAccepted: (proposalId) => accepted.get(proposalId),
    forget(proposalId) {
      runs.delete(proposalId);
      accepted.delete(proposalId);
    },
    stopAll() {
      for (const run of runs.values()) stop(run);
      runs.clear();
      accepted.clear();
    },
  };
}
