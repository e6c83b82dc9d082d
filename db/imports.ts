/** Queries around imports: what is on file already, what an import wrote, and what hangs on it since. */
import type { Database } from 'better-sqlite3';
import { desc, eq, is, isNull, sql } from 'drizzle-orm';
import { type AnySQLiteColumn, alias, getTableConfig, SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { ReadableDb } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
import * as schema from './schema/index.ts';
import { appliances, customers, imports, parties, placements, sites, staff } from './schema/index.ts';

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

type TableWithId = SQLiteTable & { readonly id: AnySQLiteColumn };
export type WrittenRow = { readonly table: TableWithId; readonly entity: string; readonly entityId: string };

const EXPORTED: readonly unknown[] = Object.values(schema);
const TABLES = new Map(
  EXPORTED.filter((one): one is TableWithId => is(one, SQLiteTable) && 'id' in one).map((table) => [
    getTableConfig(table).name,
    table,
  ]),
);

/** Rows an import made, the last first: that is the order in which they can go. */
export function listWritten(db: ReadableDb, record: ImportRecord): readonly WrittenRow[] {
  const { ops } = schema;
  return db
    .select({ entity: ops.entity, entityId: ops.entityId })
    .from(ops)
    .where(sql`${inSpan(record)} AND ${ops.kind} = 'insert' AND ${ops.entity} <> 'imports'`)
    .orderBy(desc(ops.deviceSeq))
    .all()
    .flatMap(({ entity, entityId }) => {
      const table = TABLES.get(entity);
      return table === undefined ? [] : [{ table, entity, entityId }];
    });
}

/** What was changed since in rows of the import, and which later rows point at them, by table. */
export function listLaterWork(
  db: ReadableDb,
  record: ImportRecord,
): readonly { readonly what: string; readonly count: number }[] {
  const span = sql`SELECT entity, entity_id FROM op WHERE ${inSpan(record)} AND kind = 'insert'`;
  const changed = db
    .select({ what: sql<string>`o.entity`, count: sql<number>`count(DISTINCT o.entity_id)` })
    .from(sql`(${span}) i JOIN op o ON o.entity = i.entity AND o.entity_id = i.entity_id`)
    .where(
      sql`o.entity <> 'imports' AND NOT (o.device_id = ${record.deviceId} AND o.incarnation = ${record.incarnation} AND o.device_seq BETWEEN ${record.firstSeq} AND ${record.lastSeq})`,
    )
    .groupBy(sql`o.entity`)
    .all();
  const pointing = [...TABLES.values()].flatMap((table) => {
    const { name, foreignKeys } = getTableConfig(table);
    return foreignKeys.flatMap((key) => {
      const { columns, foreignTable } = key.reference();
      const [column] = columns;
      if (column === undefined) return [];
      const count =
        db
          .select({ count: sql<number>`count(*)` })
          .from(
            sql`(${span}) i JOIN ${table} c ON i.entity = ${getTableConfig(foreignTable).name} AND c.${sql.identifier(column.name)} = i.entity_id`,
          )
          .where(sql`c.id NOT IN (SELECT entity_id FROM (${span}))`)
          .get()?.count ?? 0;
      return count === 0 ? [] : [{ what: name, count }];
    });
  });
  const totals = new Map<string, number>();
  for (const { what, count } of [...changed, ...pointing]) totals.set(what, (totals.get(what) ?? 0) + count);
  return [...totals].map(([what, count]) => ({ what, count }));
}

function inSpan({ deviceId, incarnation, firstSeq, lastSeq }: ImportRecord) {
  return sql`device_id = ${deviceId} AND incarnation = ${incarnation} AND device_seq BETWEEN ${firstSeq} AND ${lastSeq}`;
}
