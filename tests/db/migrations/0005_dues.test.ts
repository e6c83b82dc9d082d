import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('the migration to dues', () => {
  let raw: Database.Database;
  beforeEach(() => {
    raw = new Database(':memory:');
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    const all = readMigrations(`${APP_ROOT}/db/migrations`);
    const step = all.findIndex(({ name }) => name.startsWith('0005_'));
    migrate(raw, all.slice(0, step), NOW);
    raw.exec(`
      INSERT INTO staff (id, name, initials, active_from) VALUES ('s1', 'Tobias Reyle', 'TR', '2024-01-01');
      INSERT INTO appliances (id, serial, serial_key, maker, model, rated_input_basis)
        VALUES ('a1', 'TK1', 'TK1', 'Invented maker', 'T 24', 'gross');
      INSERT INTO registrations (id, appliance_id, state, by) VALUES ('r1', 'a1', 'recording', 'office');
    `);
    migrate(raw, all.slice(step, step + 1), NOW);
  });
  afterEach(() => raw.close());

  it('keeps what was there and refuses words it does not know', () => {
    expect(raw.prepare('SELECT state FROM registrations').pluck().get()).toBe('recording');
    expect(raw.pragma('foreign_key_check')).toEqual([]);
    expect(() =>
      raw.exec(
        "INSERT INTO first_year_contacts (id, appliance_id, kind, outcome, happened_on, by_id) VALUES ('c', 'a1', 'call', 'done', '2026-03-02', 's1')",
      ),
    ).toThrow(/CHECK/);
  });

  it('reads the open ones by day from an index', () => {
    const plan = raw
      .prepare(
        "EXPLAIN QUERY PLAN SELECT appliance_id FROM appliance_dues WHERE kind = 'registration' AND is_open = 1 ORDER BY due_on, appliance_id",
      )
      .all() as { detail: string }[];
    expect(plan.map(({ detail }) => detail).join('; ')).toMatch(/USING COVERING INDEX appliance_dues_by_day/);
    expect(plan.some(({ detail }) => detail.includes('TEMP B-TREE'))).toBe(false);
  });
});
