/** Queries over sealed records and their chains. */
import { asc, desc, eq } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
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
