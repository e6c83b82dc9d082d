import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('the migration to lockouts and parts of a run', () => {
  let raw: Database.Database;
  beforeEach(() => {
    raw = new Database(':memory:');
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    const all = readMigrations(`${APP_ROOT}/db/migrations`);
    const step = all.findIndex(({ name }) => name.startsWith('0009_'));
    migrate(raw, all.slice(0, step), NOW);
    raw.exec(`
      INSERT INTO appliances (id, serial, serial_key, maker, model, rated_input_basis)
        VALUES ('a1', 'TK1', 'TK1', 'Invented maker', 'T 24', 'gross');
      INSERT INTO fitted_parts (id, appliance_id, part_number, name, fitted_on)
        VALUES ('p1', 'a1', 'GV-1', 'gas valve', '2025-03-02');
    `);
    migrate(raw, all.slice(step, step + 1), NOW);
  });
  afterEach(() => raw.close());

  it('keeps a part that was noted down without a run', () => {
    expect(raw.prepare('SELECT part_number, run_id, removed_at FROM fitted_parts').get()).toEqual({
      part_number: 'GV-1',
      run_id: null,
      removed_at: null,
    });
    expect(raw.pragma('foreign_key_check')).toEqual([]);
  });

  it('takes no lockout of a run that is not there', () => {
    raw.pragma('foreign_keys = ON');
    expect(() =>
      raw.exec(
        "INSERT INTO run_lockouts (id, run_id, item_key, happened_at, by_id, recorded_at) VALUES ('l', 'r', 'lockouts', '2026-01-08T12:20:00.000Z', 's', '2026-01-08T15:00:00.000Z')",
      ),
    ).toThrow(/FOREIGN KEY/);
  });
});
