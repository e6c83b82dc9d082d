/**
 * Brings a store to the newest schema. Not drizzle's migrator: that one runs table rebuilds with foreign keys on inside a
 * transaction (children vanish silently) and skips files older than the last applied one.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';

export type Migration = { readonly name: string; readonly sql: string };

export class MigrationRefused extends Error {
  readonly code: 'newer-program' | 'edited-migration' | 'foreign-keys';
  constructor(code: 'newer-program' | 'edited-migration' | 'foreign-keys', detail: string) {
    super(`${code}: ${detail}`);
    this.code = code;
  }
}

export function readMigrations(folder: string): readonly Migration[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.sql'))
    .sort()
    .map((name) => ({ name, sql: readFileSync(join(folder, name), 'utf8') }));
}

export function pendingMigrations(raw: Database, migrations: readonly Migration[]): readonly Migration[] {
  raw.exec('CREATE TABLE IF NOT EXISTS _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
  const applied = new Map(
    (raw.prepare('SELECT name, sha FROM _migration').all() as { name: string; sha: string }[]).map((row) => [
      row.name,
      row.sha,
    ]),
  );
  const known = new Map(migrations.map((one) => [one.name, sha256(one.sql)]));
  for (const [name, sha] of applied) {
    const ours = known.get(name);
    if (ours === undefined)
      throw new MigrationRefused('newer-program', `this store was written by a newer version (${name})`);
    if (ours !== sha) throw new MigrationRefused('edited-migration', name);
  }
  return migrations.filter((one) => !applied.has(one.name));
}

/** Each migration in one transaction; foreign keys are off before it begins and checked before it commits. */
export function migrate(raw: Database, pending: readonly Migration[], now: string): void {
  for (const one of pending) {
    raw.pragma('foreign_keys = OFF');
    raw.exec('BEGIN IMMEDIATE');
    try {
      for (const statement of one.sql.split('--> statement-breakpoint')) raw.exec(statement);
      const broken = raw.pragma('foreign_key_check') as unknown[];
      if (broken.length > 0) throw new MigrationRefused('foreign-keys', one.name);
      raw.prepare('INSERT INTO _migration (name, sha, at) VALUES (?, ?, ?)').run(one.name, sha256(one.sql), now);
      raw.exec('COMMIT');
    } catch (error) {
      raw.exec('ROLLBACK');
      throw error;
    } finally {
      raw.pragma('foreign_keys = ON');
    }
  }
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
