/** Queries over sealed records and their chains. */
import type { Database } from 'better-sqlite3';
import { asc, desc, eq } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
import { sealDisclosures, seals } from './schema/index.ts';

export type SealRow = typeof seals.$inferSelect;

export function listSealsOfVisit(db: ReadableDb, visitId: string): readonly SealRow[] {
  return db.select().from(seals).where(eq(seals.visitId, visitId)).orderBy(asc(seals.sequence)).all();
}

/** The newest seal of a run: an amendment stands over what it amends. */
export function findLastSeal(db: ReadableDb, runId: string): SealRow | undefined {
  return db.select().from(seals).where(eq(seals.runId, runId)).orderBy(desc(seals.sequence)).get();
}

export function findLastSealSha256(db: ReadableDb, runId: string): string | null {
  return findLastSeal(db, runId)?.sha256 ?? null;
}

export function listDisclosures(db: ReadableDb, sealId: string): readonly (typeof sealDisclosures.$inferSelect)[] {
  return db
    .select()
    .from(sealDisclosures)
    .where(eq(sealDisclosures.sealId, sealId))
    .orderBy(asc(sealDisclosures.path))
    .all();
}

/** For recomputing, in a store or in a copy of one: the columns as they stand, nothing read into them. */
export function listSealedVisitIds(raw: Database): readonly string[] {
  return rawStatement(raw, 'SELECT DISTINCT visit_id FROM seals').pluck().all() as string[];
}

type ChainEntryRow = { readonly sealId: string } & Pick<
  SealRow,
  'visitId' | 'runId' | 'sequence' | 'kind' | 'canonical' | 'sha256' | 'previousSha256'
>;

export function listChainEntries(raw: Database, visitId: string): readonly ChainEntryRow[] {
  return rawStatement(
    raw,
    `SELECT id AS sealId, visit_id AS visitId, run_id AS runId, sequence, kind, canonical, sha256,
            previous_sha256 AS previousSha256
     FROM seals WHERE visit_id = ?`,
  ).all(visitId) as ChainEntryRow[];
}

type ChainDisclosureRow = Pick<typeof sealDisclosures.$inferSelect, 'sealId' | 'path' | 'salt' | 'value'>;

export function listChainDisclosures(raw: Database, visitId: string): readonly ChainDisclosureRow[] {
  return rawStatement(
    raw,
    `SELECT seal_id AS sealId, path, salt, value FROM seal_disclosures
     WHERE seal_id IN (SELECT id FROM seals WHERE visit_id = ?)`,
  ).all(visitId) as ChainDisclosureRow[];
}
