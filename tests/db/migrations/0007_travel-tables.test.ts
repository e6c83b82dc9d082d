import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('the migration to travel tables', () => {
  let raw: Database.Database;
  beforeEach(() => {
    raw = new Database(':memory:');
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    const all = readMigrations(`${APP_ROOT}/db/migrations`);
    const step = all.findIndex(({ name }) => name.startsWith('0007_'));
    migrate(raw, all.slice(0, step), NOW);
    raw.exec(`
      INSERT INTO staff (id, name, initials, active_from) VALUES ('s1', 'Tobias Reyle', 'TR', '2024-01-01');
      INSERT INTO attachments (id, sha256, media_type, byte_length, file_name, origin, subject, added_by_id, added_at)
        VALUES ('f1', '${'a'.repeat(64)}', 'text/csv', 12, 'ways.csv', 'original', 'file', 's1', '${NOW}');
    `);
    migrate(raw, all.slice(step, step + 1), NOW);
  });
  afterEach(() => raw.close());

  it('keeps what was there and takes only pairs that are JSON', () => {
    expect(raw.prepare('SELECT file_name FROM attachments').pluck().get()).toBe('ways.csv');
    const insert = raw.prepare(
      `INSERT INTO travel_tables (id, file_name, attachment_id, pairs, loaded_by_id, loaded_at) VALUES (?, 'ways.csv', 'f1', ?, 's1', '${NOW}')`,
    );
    insert.run('t1', '[]');
    expect(() => insert.run('t2', 'from,to')).toThrow(/CHECK/);
    expect(() => raw.exec("DELETE FROM attachments WHERE id = 'f1'")).toThrow(/FOREIGN KEY/);
    expect(raw.pragma('foreign_key_check')).toEqual([]);
  });
});
