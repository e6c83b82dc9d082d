/** Recomputes the chains of sealed records, and the heads of the days, in a store or in a copy of one. */
import type Database from 'better-sqlite3';
import { type ChainDisclosure, type ChainEntry, chainProblems, type EntryProblems } from '../sealing/chainProblems.ts';
import { findBrokenDays } from './closeDays.ts';

export function hasIntactChains(raw: Database.Database): boolean {
  const visitIds = raw.prepare('SELECT DISTINCT visit_id AS visitId FROM seals').all() as { visitId: string }[];
  const isIntact = visitIds.every(({ visitId }) => chainOf(raw, visitId).every((entry) => entry.problems.length === 0));
  return isIntact && findBrokenDays(raw).length === 0;
}

export function chainOf(raw: Database.Database, visitId: string): readonly EntryProblems[] {
  const entries = raw
    .prepare(
      'SELECT id AS sealId, visit_id AS visitId, run_id AS runId, sequence, kind, canonical, sha256, previous_sha256 AS previousSha256 FROM seals WHERE visit_id = ?',
    )
    .all(visitId) as ChainEntry[];
  const disclosures = raw
    .prepare(
      'SELECT seal_id AS sealId, path, salt, value FROM seal_disclosures WHERE seal_id IN (SELECT id FROM seals WHERE visit_id = ?)',
    )
    .all(visitId) as ChainDisclosure[];
  return chainProblems(entries, disclosures);
}
