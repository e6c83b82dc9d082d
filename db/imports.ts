/** Queries around imports: what is on file already, what was taken in, and what is under way. */
import type { Database } from 'better-sqlite3';
import { asc, desc, eq, isNull, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { ReadableDb } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
import * as schema from './schema/index.ts';
import { appliances, customers, imports, listWorks, parties, placements, sites, staff } from './schema/index.ts';

export type ImportRecord = typeof imports.$inferSelect;

export type KnownPartyRow = {
  readonly customerId: string;
  readonly name: string;
  readonly phone: string | null;
  readonly email: string | null;
  readonly street: string | null;
  readonly postcode: string | null;
  readonly city: string | null;
};

export function listKnownParties(db: ReadableDb): readonly KnownPartyRow[] {
  return db
    .select({
      customerId: customers.id,
      name: parties.name,
      phone: parties.phoneTyped,
      email: parties.email,
      street: parties.street,
      postcode: parties.postcode,
      city: parties.city,
    })
    .from(customers)
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .where(isNull(parties.erasedAt))
    .all();
}

/** Appliances by folded serial. */
export function listKnownAppliances(
  db: ReadableDb,
): ReadonlyMap<
  string,
  readonly { readonly applianceId: string; readonly maker: string; readonly where: string | null }[]
> {
  const rows = db
    .select({
      serialKey: appliances.serialKey,
      applianceId: appliances.id,
      maker: appliances.maker,
      where: sql<string | null>`${sites.street} || ', ' || ${sites.city}`,
    })
    .from(appliances)
    .leftJoin(placements, sql`${placements.applianceId} = ${appliances.id} AND ${placements.toOn} IS NULL`)
    .leftJoin(sites, eq(sites.id, placements.siteId))
    .all();
  return Map.groupBy(rows, (row) => row.serialKey);
}

export function findImport(db: ReadableDb, importId: string): ImportRecord | undefined {
  return db.select().from(imports).where(eq(imports.id, importId)).get();
}

/** The newest that is still in force, of the same bytes. */
export function findImportOf(db: ReadableDb, sha256: string): ImportRecord | undefined {
  return db
    .select({ found: imports })
    .from(imports)
    .innerJoin(schema.attachments, eq(schema.attachments.id, imports.attachmentId))
    .where(sql`${schema.attachments.sha256} = ${sha256} AND ${imports.undoneAt} IS NULL`)
    .orderBy(desc(imports.importedAt))
    .get()?.found;
}

export function listImports(db: ReadableDb) {
  const undoer = alias(staff, 'undoer');
  return db
    .select({ record: imports, importedByName: staff.name, undoneByName: undoer.name })
    .from(imports)
    .innerJoin(staff, eq(staff.id, imports.importedById))
    .leftJoin(undoer, eq(undoer.id, imports.undoneById))
    .orderBy(desc(imports.importedAt))
    .all();
}

export type WaitingListRow = {
  readonly attachmentId: string;
  readonly fileName: string;
  readonly addedAt: string;
  readonly addedByName: string;
};

/** A list of the same name that was taken in later settles it; the table of ways is no such list. */
export function listWaitingLists(raw: Database, since: string): readonly WaitingListRow[] {
  return rawStatement(
    raw,
    `SELECT a.id AS attachmentId, a.file_name AS fileName, max(a.added_at) AS addedAt, f.name AS addedByName
     FROM attachments a JOIN staff f ON f.id = a.added_by_id
     WHERE a.subject = 'table' AND a.origin = 'original' AND a.added_at >= ?
       AND NOT EXISTS (SELECT 1 FROM imports i WHERE i.file_name = a.file_name AND i.imported_at >= a.added_at)
       AND a.id NOT IN (SELECT attachment_id FROM travel_tables)
     GROUP BY a.file_name ORDER BY addedAt DESC LIMIT 5`,
  ).all(since) as WaitingListRow[];
}

export type ListWorkRow = typeof listWorks.$inferSelect;

/** Those under way, and those that a start found cut off. */
export function listListWorks(db: ReadableDb): readonly { readonly work: ListWorkRow; readonly begunByName: string }[] {
  return db
    .select({ work: listWorks, begunByName: staff.name })
    .from(listWorks)
    .innerJoin(staff, eq(staff.id, listWorks.begunById))
    .orderBy(asc(listWorks.begunAt), asc(listWorks.id))
    .all();
}

export function findListWork(db: ReadableDb, workId: string): ListWorkRow | undefined {
  return db.select().from(listWorks).where(eq(listWorks.id, workId)).get();
}
