/** All search caches of a store. */
import type { Database } from 'better-sqlite3';
import { APPLIANCE_FINDS } from './applianceFinds.ts';
import { CUSTOMER_FINDS } from './customerFinds.ts';
import { dropSearchCache, ensureSearchCache } from './searchCache.ts';

const CACHES = [APPLIANCE_FINDS, CUSTOMER_FINDS] as const;

export function ensureSearchCaches(raw: Database): void {
  for (const cache of CACHES) ensureSearchCache(raw, cache);
}

export function dropSearchCaches(raw: Database): void {
  for (const cache of CACHES) dropSearchCache(raw, cache);
}
