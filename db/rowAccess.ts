/** Reads, inserts and updates one row of any table by its id, through statements that are compiled once. */
import type { Database } from 'better-sqlite3';
import { getTableColumns, getTableName } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import { rawStatement } from './rawStatement.ts';

export function insertRow(raw: Database, table: SQLiteTable, row: object): void {
  const { names, values } = toDriver(table, row);
  const columns = names.map((name) => `"${name}"`).join(', ');
  const places = names.map(() => '?').join(', ');
  rawStatement(raw, `INSERT INTO "${getTableName(table)}" (${columns}) VALUES (${places})`).run(...values);
}

/** By the names in code, as drizzle would give it; undefined: there is no such row. */
export function readRow(raw: Database, table: SQLiteTable, rowId: string): Record<string, unknown> | undefined {
  const found = rawStatement(raw, `SELECT * FROM "${getTableName(table)}" WHERE id = ?`).get(rowId) as
    | Record<string, unknown>
    | undefined;
  if (found === undefined) return undefined;
  return Object.fromEntries(
    Object.entries(getTableColumns(table)).map(([name, column]) => {
      const value = found[column.name];
      return [name, value === null ? null : column.mapFromDriverValue(value as never)];
    }),
  );
}

export function updateRow(raw: Database, table: SQLiteTable, rowId: string, patch: object): void {
  const { names, values } = toDriver(table, patch);
  const settings = names.map((name) => `"${name}" = ?`).join(', ');
  rawStatement(raw, `UPDATE "${getTableName(table)}" SET ${settings} WHERE id = ?`).run(...values, rowId);
}

function toDriver(
  table: SQLiteTable,
  row: object,
): { readonly names: readonly string[]; readonly values: readonly unknown[] } {
  const columns = getTableColumns(table);
  const given = Object.entries(row).flatMap(([name, value]) => {
    const column = columns[name];
    return column === undefined || value === undefined ? [] : [{ column, value }];
  });
  return {
    names: given.map(({ column }) => column.name),
    values: given.map(({ column, value }) => (value === null ? null : column.mapToDriverValue(value))),
  };
}
