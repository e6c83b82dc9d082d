/** Recomputes the chains of sealed records, and the heads of the days, in a store or in a copy of one. */
import type { Database } from 'better-sqlite3';
import { listChainDisclosures, listChainEntries, listSealedVisitIds } from '../../db/seals.ts';
import { chainProblems, type EntryProblems } from '../sealing/chainProblems.ts';
import { findBrokenDays } from './closeDays.ts';

export function hasIntactChains(raw: Database): boolean {
  const isIntact = listSealedVisitIds(raw).every((visitId) =>
    chainOf(raw, visitId).every((entry) => entry.problems.length === 0),
  );
  return isIntact && findBrokenDays(raw).length === 0;
}

export function chainOf(raw: Database, visitId: string): readonly EntryProblems[] {
  return chainProblems(listChainEntries(raw, visitId), listChainDisclosures(raw, visitId));
}
