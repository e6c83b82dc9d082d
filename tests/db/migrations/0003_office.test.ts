import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('the migration to the office’s round', () => {
  let raw: Database.Database;
  beforeEach(() => {
    raw = new Database(':memory:');
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    const all = readMigrations(join(APP_ROOT, 'db/migrations'));
    const at = all.findIndex(({ name }) => name.endsWith('_office.sql'));
    migrate(raw, all.slice(0, at), NOW);
    raw.exec(`
      INSERT INTO staff (id, name, initials, active_from) VALUES ('s1', 'Tobias Reyle', 'TR', '2024-01-01');
      INSERT INTO appliances (id, serial, serial_key, maker, model, rated_input_basis)
        VALUES ('a1', 'TK1', 'TK1', 'Invented maker', 'T 24', 'gross');
      INSERT INTO claims (id, appliance_id, part_number, opened_on, outcome, parts_minor_units, labour_minor_units, currency)
        VALUES ('m1', 'a1', 'P-77', '2025-11-03', 'granted-in-part', 38500, 75500, 'USD');
    `);
    migrate(raw, all.slice(at), NOW);
  });
  afterEach(() => raw.close());

  it('keeps the claims, with nothing decided apart yet', () => {
    expect(raw.prepare('SELECT * FROM claims').get()).toMatchObject({
      id: 'm1',
      part_number: 'P-77',
      outcome: 'granted-in-part',
      parts_minor_units: 38500,
      parts_outcome: null,
      labour_outcome: null,
      parts_granted_minor_units: null,
      part_name: null,
    });
    expect(raw.pragma('foreign_key_check')).toEqual([]);
    expect(raw.prepare("SELECT sql FROM sqlite_schema WHERE name = 'claims'").pluck().get()).toMatch(/STRICT$/);
  });

  it.each([
    ['an outcome that is none', "UPDATE claims SET labour_outcome = 'lost'"],
    [
      'an event of no known kind',
      "INSERT INTO message_events VALUES ('e', 'x', 'read', '2026-01-01', NULL, 's1', 'now')",
    ],
    [
      'altitudes the wrong way round',
      `INSERT INTO recalls (id, title, source, maker, models, serial_ranges, altitude_min_m, altitude_max_m, issued_on, what_to_do, added_by_id, added_at)
        VALUES ('r', 't', 's', 'm', '[]', '[]', 900, 100, '2026-01-01', 'w', 's1', '${NOW}')`,
    ],
  ])('refuses %s', (_what, sql) => {
    raw.pragma('foreign_keys = OFF');
    expect(() => raw.prepare(sql).run()).toThrow(/CHECK/);
  });
});
