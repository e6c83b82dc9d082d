/** Reads, inserts and updates one row of any table by its id, through statements that are compiled once. */
import type { Database, Statement } from 'better-sqlite3';
import { getTableColumns, getTableName } from 'drizzle-orm';
import type { AnySQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';

type Columns = Readonly<Record<string, AnySQLiteColumn>>;

export function insertRow(raw: Database, table: SQLiteTable, row: object): void {
  const access = accessTo(raw, table);
  const names = givenNames(access, row);
  const insert = statementFor(access.inserts, names, () => {
    const columns = quoted(access, names).join(', ');
    return raw.prepare(`INSERT INTO "${access.name}" (${columns}) VALUES (${names.map(() => '?').join(', ')})`);
  });
  insert.run(...driverValues(access, names, row));
}

/** By the names in code, as drizzle would give it; undefined: there is no such row. */
export function readRow(raw: Database, table: SQLiteTable, rowId: string): Record<string, unknown> | undefined {
  const access = accessTo(raw, table);
  access.read ??= raw.prepare(`SELECT * FROM "${access.name}" WHERE id = ?`);
  const found = access.read.get(rowId) as Record<string, unknown> | undefined;
  if (found === undefined) return undefined;
  const row: Record<string, unknown> = {};
  for (const [name, column] of Object.entries(access.columns)) {
    const value = found[column.name];
    row[name] = value === null ? null : column.mapFromDriverValue(value as never);
  }
  return row;
}

export function updateRow(raw: Database, table: SQLiteTable, rowId: string, patch: object): void {
  const access = accessTo(raw, table);
  const names = givenNames(access, patch);
  const update = statementFor(access.updates, names, () => {
    const settings = quoted(access, names).map((name) => `${name} = ?`);
    return raw.prepare(`UPDATE "${access.name}" SET ${settings.join(', ')} WHERE id = ?`);
  });
  update.run(...driverValues(access, names, patch), rowId);
}

/** What is known of a table of an opened store: every saved field comes by here. */
type Access = {
  readonly name: string;
  readonly columns: Columns;
  read: Statement | null;
  /** By the names given. */
  readonly inserts: Map<string, Statement>;
  readonly updates: Map<string, Statement>;
};

const perStore = new WeakMap<Database, Map<SQLiteTable, Access>>();

function accessTo(raw: Database, table: SQLiteTable): Access {
  const tables = perStore.get(raw) ?? new Map<SQLiteTable, Access>();
  perStore.set(raw, tables);
  const known = tables.get(table);
  if (known !== undefined) return known;
  const name = getTableName(table);
  const made: Access = {
    name,
    columns: getTableColumns(table) as Columns,
    read: null,
    inserts: new Map<string, Statement>(),
    updates: new Map<string, Statement>(),
  };
  tables.set(table, made);
  return made;
}

function statementFor(statements: Map<string, Statement>, names: readonly string[], make: () => Statement): Statement {
  const key = names.join();
  const known = statements.get(key);
  if (known !== undefined) return known;
  const made = make();
  statements.set(key, made);
  return made;
}

function givenNames({ columns }: Access, row: object): readonly string[] {
  return Object.keys(row).filter((name) => name in columns && row[name as keyof typeof row] !== undefined);
}

function quoted({ columns }: Access, names: readonly string[]): readonly string[] {
  return names.map((name) => `"${columns[name]?.name}"`);
}

function driverValues({ columns }: Access, names: readonly string[], row: object): readonly unknown[] {
  return names.map((name) => {
    const value: unknown = row[name as keyof typeof row];
    return value === null ? null : columns[name]?.mapToDriverValue(value);
  });
}
