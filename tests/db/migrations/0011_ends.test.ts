import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('the migration to ends and withdrawals', () => {
  let raw: Database.Database;
  beforeEach(() => {
    raw = new Database(':memory:');
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    const all = readMigrations(`${APP_ROOT}/db/migrations`);
    const step = all.findIndex(({ name }) => name.startsWith('0011_'));
    migrate(raw, all.slice(0, step), NOW);
    raw.exec(`
      INSERT INTO staff (id, name, initials, active_from) VALUES ('s1', 'Tobias Reyle', 'TR', '2020-01-01');
      INSERT INTO licences (id, staff_id, number, issuer, place, licence_class, valid_from, valid_to)
        VALUES ('l1', 's1', '7', 'Invented body', 'CA', 'gas', '2025-01-01', '2027-01-01');
      INSERT INTO trainings (id, staff_id, maker, model_line, valid_from) VALUES ('t1', 's1', 'Tarn', 'K', '2025-01-01');
    `);
    migrate(raw, all.slice(step, step + 1), NOW);
  });
  afterEach(() => raw.close());

  it('withdraws nothing that was on file', () => {
    expect(raw.prepare('SELECT withdrawn_at, end_reason, valid_to FROM licences').all()).toEqual([
      { withdrawn_at: null, end_reason: null, valid_to: '2027-01-01' },
    ]);
    expect(raw.prepare('SELECT withdrawn_at, end_reason FROM trainings').all()).toEqual([
      { withdrawn_at: null, end_reason: null },
    ]);
    expect(raw.pragma('foreign_key_check')).toEqual([]);
  });
});
