/** Queries over sheets in the making. */
import { and, asc, desc, eq, isNotNull, isNull } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { sheetDraftEdits, sheetDrafts, sheetRevisions, staff } from './schema/index.ts';

export type SheetDraftRow = typeof sheetDrafts.$inferSelect;
export type SheetDraftEditRow = typeof sheetDraftEdits.$inferSelect;

export function listOpenSheetDrafts(db: ReadableDb) {
  return draftsWithNames(db)
    .where(and(isNull(sheetDrafts.publishedRevisionId), isNull(sheetDrafts.discardedAt)))
    .orderBy(desc(sheetDrafts.startedAt), desc(sheetDrafts.id))
    .all();
}

/** Those thrown away, the last one first. */
export function listDiscardedSheetDrafts(db: ReadableDb, limit: number) {
  return draftsWithNames(db)
    .where(isNotNull(sheetDrafts.discardedAt))
    .orderBy(desc(sheetDrafts.discardedAt), desc(sheetDrafts.id))
    .limit(limit)
    .all();
}

function draftsWithNames(db: ReadableDb) {
  return db
    .select({ draft: sheetDrafts, from: sheetRevisions, startedByName: staff.name })
    .from(sheetDrafts)
    .innerJoin(sheetRevisions, eq(sheetRevisions.id, sheetDrafts.fromRevisionId))
    .innerJoin(staff, eq(staff.id, sheetDrafts.startedById))
    .$dynamic();
}

export function findSheetDraft(db: ReadableDb, draftId: string): SheetDraftRow | undefined {
  return db.select().from(sheetDrafts).where(eq(sheetDrafts.id, draftId)).get();
}

/** All of them in order, those taken back too. */
export function listSheetDraftEdits(db: ReadableDb, draftId: string): readonly SheetDraftEditRow[] {
  return db
    .select()
    .from(sheetDraftEdits)
    .where(eq(sheetDraftEdits.draftId, draftId))
    .orderBy(asc(sheetDraftEdits.position))
    .all();
}
