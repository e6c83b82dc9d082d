/** Queries over model sheets and their revisions. */
import { and, asc, desc, eq, sql } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { preparedOnce } from './preparedOnce.ts';
import { sheetRevisions } from './schema/index.ts';

export type SheetRevisionRow = typeof sheetRevisions.$inferSelect;

/** Newest revision first within a sheet. */
export function listSheetRevisions(db: ReadableDb): readonly SheetRevisionRow[] {
  return db
    .select()
    .from(sheetRevisions)
    .orderBy(asc(sheetRevisions.sheetId), ...NEWEST_FIRST)
    .all();
}

/** Which there are, in the same order, without what is in them. */
export function listRevisionHeads(db: ReadableDb): readonly Pick<SheetRevisionRow, 'id' | 'sheetId' | 'maker'>[] {
  return db
    .select({ id: sheetRevisions.id, sheetId: sheetRevisions.sheetId, maker: sheetRevisions.maker })
    .from(sheetRevisions)
    .orderBy(asc(sheetRevisions.sheetId), ...NEWEST_FIRST)
    .all();
}

/** Year and month, then the number behind the point as a number: the tenth of a month comes after the second. */
const NEWEST_FIRST = [
  desc(sql`substr(${sheetRevisions.revision}, 1, 7)`),
  desc(sql`CAST(substr(${sheetRevisions.revision}, 9) AS INTEGER)`),
] as const;

export function findRevision(db: ReadableDb, sheetId: string, revision: string): SheetRevisionRow | undefined {
  return db
    .select()
    .from(sheetRevisions)
    .where(and(eq(sheetRevisions.sheetId, sheetId), eq(sheetRevisions.revision, revision)))
    .get();
}

export function findNewestRevision(db: ReadableDb, sheetId: string): SheetRevisionRow | undefined {
  return db
    .select()
    .from(sheetRevisions)
    .where(eq(sheetRevisions.sheetId, sheetId))
    .orderBy(...NEWEST_FIRST)
    .limit(1)
    .get();
}

const revisionsById = preparedOnce(() => new Map<string, SheetRevisionRow>());

/** A revision never changes, so each is read once: its body is large and every saved field asks for it. */
export function getRevisionById(db: ReadableDb, revisionId: string): SheetRevisionRow {
  const known = revisionsById(db).get(revisionId);
  if (known !== undefined) return known;
  const row = db.select().from(sheetRevisions).where(eq(sheetRevisions.id, revisionId)).get();
  if (row === undefined) throw new Error(`no sheet revision ${revisionId}`);
  revisionsById(db).set(revisionId, row);
  return row;
}
