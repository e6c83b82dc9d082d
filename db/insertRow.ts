/** Inserts by a statement prepared once per table and set of columns: building and preparing it anew each time costs more than the insert. */
import type { Database, Statement } from 'better-sqlite3';
import { getTableColumns, getTableName } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';

const prepared = new WeakMap<Database, Map<string, Statement>>();

export function insertRow(raw: Database, table: SQLiteTable, row: object): void {
  const columns = getTableColumns(table);
  const given = Object.entries(row).filter(([name, value]) => value !== undefined && name in columns);
  const values = given.map(([name, value]) => (value === null ? null : columns[name]?.mapToDriverValue(value)));
  statementFor(
    raw,
    getTableName(table),
    given.map(([name]) => columns[name]?.name ?? name),
  ).run(...values);
}

function statementFor(raw: Database, tableName: string, columnNames: readonly string[]): Statement {
  const statements = prepared.get(raw) ?? new Map<string, Statement>();
  prepared.set(raw, statements);
  const key = `${tableName}(${columnNames.join()})`;
  const known = statements.get(key);
  if (known !== undefined) return known;
  const quoted = columnNames.map((name) => `"${name}"`).join(', ');
  const made = raw.prepare(`INSERT INTO "${tableName}" (${quoted}) VALUES (${columnNames.map(() => '?').join(', ')})`);
  statements.set(key, made);
  return made;
}
