/**
 * A list being taken in or out: one at a time, a little at a time, so that others are answered in between. It goes on by
 * itself until it is through or stopped, whether or not anybody looks.
 */
import { setImmediate, setTimeout } from 'node:timers/promises';
import type { LongWrite } from '../../../db/longWrite.ts';
import type { ImportCounts } from './keepImport.ts';

/** `looking`: whether later work hangs on it. `finds` and `dues`: what is searched and what falls due, at the end. */
export type ListStep = {
  readonly doing: 'looking' | 'rows' | 'finds' | 'dues';
  readonly done: number;
  readonly of: number;
};

/** What was taken in or out. */
export type ListResult = { readonly importId: string; readonly counts: ImportCounts };

export type ListProgress =
  | { readonly isDone: false; readonly step: ListStep | null }
  | ({ readonly isDone: true } & ListResult);

export type ListWorkOrder = {
  readonly workId: string;
  readonly long: LongWrite;
  readonly work: (long: LongWrite) => Generator<ListStep, ListResult>;
  /** It is kept, or it failed and nothing of it was. Not called for one that is stopped. */
  readonly onEnd: (isKept: boolean) => void;
};

export type ListWorks = {
  readonly start: (order: ListWorkOrder) => void;
  /** The one under way. */
  readonly going: () => string | null;
  /** How far it is, after a moment or at its end. undefined: stopped, or not known. Throws what it failed with. */
  readonly follow: (workId: string, forMs: number) => Promise<ListProgress | undefined>;
  /** Nothing of it stays. false: it was through already, or is not known. */
  readonly stop: (workId: string) => boolean;
  /** The store goes away, or another one comes. */
  readonly stopAll: () => void;
};

/** How long anybody else may have to wait for an answer meanwhile. */
const TURN_MS = 40;

type Run = {
  readonly order: ListWorkOrder;
  readonly ended: Promise<void>;
  state: 'going' | 'kept' | 'stopped' | 'failed';
  step: ListStep | null;
  result: ListResult | null;
  error: unknown;
};

export function createListWorks(): ListWorks {
  /** The one under way, or the last one, for whoever still asks after it. */
  let run: Run | null = null;

  async function drive(going: Run): Promise<void> {
    const { long, work, onEnd } = going.order;
    try {
      const steps = toItsEnd(long, work);
      for (let turnMs = performance.now(); ; ) {
        const turn = steps.next();
        if (turn.done === true) {
          long.keep();
          going.state = 'kept';
          going.result = turn.value;
          break;
        }
        going.step = turn.value;
        if (performance.now() - turnMs < TURN_MS) continue;
        await setImmediate();
        if (going.state !== 'going') return;
        turnMs = performance.now();
      }
    } catch (error) {
      long.drop();
      going.state = 'failed';
      going.error = error;
    }
    onEnd(going.state === 'kept');
  }

  function end(going: Run): void {
    going.state = 'stopped';
    going.order.long.drop();
  }

  const find = (workId: string): Run | null => (run?.order.workId === workId ? run : null);

  return {
    start(order) {
      const started = Promise.withResolvers<void>();
      const going: Run = { order, ended: started.promise, state: 'going', step: null, result: null, error: null };
      run = going;
      void setImmediate()
        .then(() => (going.state === 'going' ? drive(going) : undefined))
        .then(started.resolve, started.reject);
    },
    going: () => (run?.state === 'going' ? run.order.workId : null),
    async follow(workId, forMs) {
      const followed = find(workId);
      if (followed === null) return undefined;
      const timeUp = new AbortController();
      if (followed.state === 'going')
        await Promise.race([followed.ended, setTimeout(forMs, undefined, { signal: timeUp.signal }).catch(() => {})]);
      timeUp.abort();
      if (followed.state === 'failed') throw followed.error;
      if (followed.result !== null) return { isDone: true, ...followed.result };
      return followed.state === 'stopped' ? undefined : { isDone: false, step: followed.step };
    },
    stop(workId) {
      const stopped = find(workId);
      if (stopped?.state !== 'going') return false;
      end(stopped);
      return true;
    },
    stopAll() {
      if (run?.state === 'going') end(run);
      run = null;
    },
  };
}

function* toItsEnd(long: LongWrite, work: ListWorkOrder['work']): Generator<ListStep, ListResult> {
  const result = yield* work(long);
  yield* long.settle();
  return result;
}
