/** Statements of the writer, compiled once per store and text. */
import type { Database, Statement } from 'better-sqlite3';

const perStore = new WeakMap<Database, Map<string, Statement>>();

export function rawStatement(raw: Database, sqlText: string): Statement {
  const statements = perStore.get(raw) ?? new Map<string, Statement>();
  perStore.set(raw, statements);
  const known = statements.get(sqlText);
  if (known !== undefined) return known;
  const made = raw.prepare(sqlText);
  statements.set(sqlText, made);
  return made;
}
