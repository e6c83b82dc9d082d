import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('the migration to loads whose input is not known', () => {
  let raw: Database.Database;
  beforeEach(() => {
    raw = new Database(':memory:');
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    const all = readMigrations(`${APP_ROOT}/db/migrations`);
    const step = all.findIndex(({ name }) => name.startsWith('0010_'));
    migrate(raw, all.slice(0, step), NOW);
    raw.exec(`
      INSERT INTO gas_supplies (id, kind, fuel) VALUES ('g1', 'meter', 'natural-gas');
      INSERT INTO gas_loads (id, gas_supply_id, name, input_kw) VALUES ('l1', 'g1', 'range', 15);
    `);
    migrate(raw, all.slice(step, step + 1), NOW);
  });
  afterEach(() => raw.close());

  it('keeps the loads, takes one without an input, and still refuses nought', () => {
    const insert = raw.prepare(
      "INSERT INTO gas_loads (id, gas_supply_id, name, input_kw) VALUES (?, 'g1', 'dryer', ?)",
    );
    insert.run('l2', null);
    expect(raw.prepare('SELECT input_kw FROM gas_loads ORDER BY id').pluck().all()).toEqual([15, null]);
    expect(() => insert.run('l3', 0)).toThrow(/CHECK/);
    expect(() => raw.exec("DELETE FROM gas_supplies WHERE id = 'g1'")).toThrow(/FOREIGN KEY/);
    expect(raw.pragma('foreign_key_check')).toEqual([]);
  });
});
