import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('the migration to sheet drafts and paper', () => {
  let raw: Database.Database;
  beforeEach(() => {
    raw = new Database(':memory:');
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    const all = readMigrations(`${APP_ROOT}/db/migrations`);
    const step = all.findIndex(({ name }) => name.startsWith('0006_'));
    migrate(raw, all.slice(0, step), NOW);
    raw.exec(`
      INSERT INTO staff (id, name, initials, active_from) VALUES ('s1', 'Tobias Reyle', 'TR', '2024-01-01');
      INSERT INTO sheet_revisions (id, sheet_id, revision, title, body, sha256, added_at, source)
        VALUES ('r1', 'invented', '2026-01', 'Invented', '{}', 'x', '${NOW}', 'a file');
    `);
    migrate(raw, all.slice(step, step + 1), NOW);
  });
  afterEach(() => raw.close());

  it('keeps the sheets and lets none of them change or go', () => {
    expect(raw.prepare('SELECT title FROM sheet_revisions').pluck().all()).toEqual(['Invented']);
    expect(() => raw.exec("UPDATE sheet_revisions SET body = '[]'")).toThrow(/gets a new revision/);
    expect(() => raw.exec('DELETE FROM sheet_revisions')).toThrow(/never deleted/);
    expect(raw.pragma('foreign_key_check')).toEqual([]);
  });

  it.each([
    [
      'a draft that was published and thrown away',
      `INSERT INTO sheet_drafts VALUES ('d', 'r1', 's1', '${NOW}', 'r1', '${NOW}')`,
    ],
    ['an edit that is no JSON', `INSERT INTO sheet_draft_edits VALUES ('e', 'd', 1, 'x', 's1', '${NOW}', NULL)`],
    [
      'a copy from paper of an unknown kind',
      `INSERT INTO transcriptions VALUES ('t', 'r', 'staff', 's1', 's1', '${NOW}')`,
    ],
  ])('refuses %s', (_what, sql) => {
    expect(() => raw.exec(sql)).toThrow(/CHECK/);
  });
});
