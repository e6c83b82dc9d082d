/** Counts what packets still lack, those nearest to their last day first, as long as a list may take. */
import { keepGapCount, listUncounted } from '../../db/dues/registrationGaps.ts';
import type { HandlerContext } from './handler.ts';
import { listPacketGaps } from './packetInput.ts';
import { loadRun } from './runState.ts';

/** One packet costs some 40 ms: a page shows what it has by then, and the rest when it is asked again. */
export const PAGE_BUDGET_MS = 80;

/** How many are left uncounted. */
export function countGaps(context: HandlerContext, budgetMs: number): number {
  const { raw } = context.store;
  const uncounted = listUncounted(raw, context.now);
  const startMs = performance.now();
  let left = uncounted.length;
  for (const runId of uncounted) {
    if (performance.now() - startMs > budgetMs) break;
    const gaps = listPacketGaps(context.db, runId, context.now);
    const isSealed = loadRun(context.db, runId).run.sealedAt !== null;
    keepGapCount(raw, { runId, isSealed, gapCount: gaps.length, countedAt: context.now });
    left -= 1;
  }
  return left;
}
