/** Counts what packets still lack, as long as a list may take. */
import { keepGapCount, listUncounted, listUncountedOf } from '../../db/dues/registrationGaps.ts';
import type { HandlerContext } from './handler.ts';
import { listPacketGaps } from './packetInput.ts';
import { loadRun } from './runState.ts';

/** One packet costs some 40 ms: a page shows what it has by then, and the rest when it is asked again. */
export const PAGE_BUDGET_MS = 80;

/** Those nearest to their last day first. How many are left uncounted. */
export function countGaps(context: HandlerContext, budgetMs: number): number {
  return countRuns(context, budgetMs, listUncounted(context.store.raw, context.now));
}

/** Only what these appliances' packets lack. */
export function countGapsOf(context: HandlerContext, budgetMs: number, applianceIds: readonly string[]): number {
  return countRuns(context, budgetMs, listUncountedOf(context.store.raw, context.now, applianceIds));
}

function countRuns(context: HandlerContext, budgetMs: number, runIds: readonly string[]): number {
  const startMs = performance.now();
  let left = runIds.length;
  // Who only looks does not wait for a long write.
  if (!context.store.isFree()) return left;
  for (const runId of runIds) {
    if (performance.now() - startMs > budgetMs) break;
    const gaps = listPacketGaps(context.db, runId, context.now);
    const isSealed = loadRun(context.db, runId).run.sealedAt !== null;
    keepGapCount(context.store.raw, { runId, isSealed, gapCount: gaps.length, countedAt: context.now });
    left -= 1;
  }
  return left;
}
