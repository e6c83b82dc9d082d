/** All search caches of a store. */
import type { Database } from 'better-sqlite3';
import { APPLIANCE_FINDS } from './applianceFinds.ts';
import { CUSTOMER_FINDS } from './customerFinds.ts';
import { dropSearchCache, ensureSearchCache, fillSearchCache } from './searchCache.ts';

const CACHES = [APPLIANCE_FINDS, CUSTOMER_FINDS] as const;

export function ensureSearchCaches(raw: Database): void {
  for (const cache of CACHES) ensureSearchCache(raw, cache);
}

export function dropSearchCaches(raw: Database): void {
  for (const cache of CACHES) dropSearchCache(raw, cache);
}

/** Filling one row anew costs about a fifth of following it through the triggers, measured with 20 000 of either. */
const FOLLOWED_COSTS = 5;
/** Below, neither takes long enough to be worth changing the schema for. */
const FEW = 1000;

/** Whether a write that adds or removes so many customers and appliances does better without triggers and all rows filled anew. */
export function isFindsWorthRefilling(raw: Database, foundRows: number): boolean {
  return foundRows >= FEW && countFound(raw) + foundRows < foundRows * FOLLOWED_COSTS;
}

/** All that were dropped, made and filled a piece at a time. */
export function* fillSearchCaches(raw: Database): Generator<{ readonly done: number; readonly of: number }> {
  const of = countFound(raw);
  let before = 0;
  for (const cache of CACHES) {
    let filled = 0;
    for (filled of fillSearchCache(raw, cache)) yield { done: before + filled, of };
    before += filled;
  }
}

function countFound(raw: Database): number {
  return raw
    .prepare('SELECT (SELECT count(*) FROM customers) + (SELECT count(*) FROM appliances)')
    .pluck()
    .get() as number;
}
