/**
 * The rows an import wrote, and what hangs on them since. They are read back from its span of the change log into a table of
 * the connection's own, so that each table that points at them is asked once and not once per row.
 */
import type { Database } from 'better-sqlite3';
import { type AnySQLiteColumn, getTableConfig, type SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { ImportRecord } from './imports.ts';
import { rawStatement } from './rawStatement.ts';
import { SCHEMA_TABLES } from './schemaTables.ts';

type TableWithId = SQLiteTable & { readonly id: AnySQLiteColumn };
export type ImportedRow = { readonly table: TableWithId; readonly entityId: string };

const TABLES = new Map(
  SCHEMA_TABLES.filter((one): one is TableWithId => 'id' in one).map((table) => [getTableConfig(table).name, table]),
);

/** Parameters: device, incarnation, first and last place in its log. The row of the import itself is no part of what it wrote. */
const WRITTEN = `device_id = ? AND incarnation = ? AND device_seq BETWEEN ? AND ? AND kind = 'insert' AND entity <> 'imports'`;

function spanOf({ deviceId, incarnation, firstSeq, lastSeq }: ImportRecord): readonly (string | number)[] {
  return [deviceId, incarnation, firstSeq, lastSeq];
}

/** Must come before the other two of this file, on the same connection. Answers how many rows there are. */
export function readImportedRows(raw: Database, record: ImportRecord): number {
  raw.exec(
    'CREATE TEMP TABLE imported (entity TEXT NOT NULL, entity_id TEXT NOT NULL, PRIMARY KEY (entity, entity_id)) WITHOUT ROWID, STRICT',
  );
  return rawStatement(raw, `INSERT INTO temp.imported SELECT entity, entity_id FROM op WHERE ${WRITTEN}`).run(
    ...spanOf(record),
  ).changes;
}

const AT_ONCE = 5000;

/** The last first, so that no row goes before those that point at it; so many at a time. */
export function* listImportedRows(raw: Database, record: ImportRecord): Generator<readonly ImportedRow[]> {
  const [deviceId, incarnation, firstSeq] = spanOf(record);
  const read = rawStatement(raw, `SELECT entity, entity_id FROM op WHERE ${WRITTEN} ORDER BY device_seq DESC`).raw();
  for (let to = record.lastSeq; to >= record.firstSeq; to -= AT_ONCE) {
    const from = Math.max(Number(firstSeq), to - AT_ONCE + 1);
    const rows = read.all(deviceId, incarnation, from, to) as (readonly [entity: string, entityId: string])[];
    yield rows.map(([entity, entityId]) => {
      const table = TABLES.get(entity);
      if (table === undefined) throw new Error(`an import wrote into ${entity}, which is no table`);
      return { table, entityId };
    });
  }
}

export type LaterWork = readonly { readonly what: string; readonly count: number }[];

/**
 * Which of the rows were changed since, and which rows that are not the import's own point at them, by table. Every pointer of
 * every table is looked at; stops after each.
 */
export function* listLaterWork(
  raw: Database,
  record: ImportRecord,
): Generator<{ readonly done: number; readonly of: number }, LaterWork> {
  const totals = new Map<string, number>();
  const add = (what: string, count: number): void => {
    if (count > 0) totals.set(what, (totals.get(what) ?? 0) + count);
  };
  // The log only grows: what was done to a row after the import stands behind the import in it.
  const changed = rawStatement(
    raw,
    `SELECT o.entity, count(DISTINCT o.entity_id) FROM op o JOIN temp.imported i ON i.entity = o.entity AND i.entity_id = o.entity_id
     WHERE o.rowid > (SELECT rowid FROM op WHERE device_id = ? AND incarnation = ? AND device_seq = ?) GROUP BY o.entity`,
  ).raw();
  const [deviceId, incarnation] = spanOf(record);
  for (const [what, count] of changed.all(deviceId, incarnation, record.lastSeq) as [string, number][])
    add(what, count);
  const entities = new Set(rawStatement(raw, 'SELECT DISTINCT entity FROM temp.imported').pluck().all() as string[]);
  const pointers = listPointers(raw).filter(({ to }) => entities.has(to));
  for (const [index, { table, column, to }] of pointers.entries()) {
    const count = rawStatement(
      raw,
      `SELECT count(*) FROM temp.imported i JOIN "${table}" c ON c."${column}" = i.entity_id
       WHERE i.entity = ? AND NOT EXISTS (SELECT 1 FROM temp.imported own WHERE own.entity = ? AND own.entity_id = c.id)`,
    ).pluck();
    add(table, count.get(to, table) as number);
    yield { done: index + 1, of: pointers.length };
  }
  return [...totals].map(([what, count]) => ({ what, count }));
}

/** Every foreign key of the store, as SQLite itself knows them. */
function listPointers(
  raw: Database,
): readonly { readonly table: string; readonly column: string; readonly to: string }[] {
  return raw
    .prepare(
      `SELECT t.name AS "table", k."from" AS "column", k."table" AS "to" FROM sqlite_schema t JOIN pragma_foreign_key_list(t.name) k
       WHERE t.type = 'table' ORDER BY t.name, k.id, k.seq`,
    )
    .all() as ReturnType<typeof listPointers>;
}
