import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('the migration to planning', () => {
  let folder: string;
  let raw: Database.Database;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'lightoff-migration-'));
    raw = new Database(join(folder, 'before.db'));
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    const [start, ...later] = readMigrations(join(APP_ROOT, 'db/migrations'));
    if (start === undefined) throw new Error('no migrations');
    migrate(raw, [start], NOW);
    raw.exec(`
      INSERT INTO staff (id, name, initials, active_from) VALUES ('s1', 'Tobias Reyle', 'TR', '2024-01-01');
      INSERT INTO companies (id, name, country, time_zone, unit_system, language, jurisdiction)
        VALUES ('c1', 'Kittiwake Heating', 'CA', 'America/Halifax', 'metric', 'en', 'north-america');
      INSERT INTO parties (id, kind, name, search_text) VALUES ('p1', 'person', 'Lowri', 'lowri');
      INSERT INTO customers (id, party_id, since) VALUES ('k1', 'p1', '2024-01-01');
      INSERT INTO sites (id, customer_id, street, city, country, jurisdiction, time_zone, building_kind, search_text)
        VALUES ('t1', 'k1', '9 Fathom Street', 'Graven Bay', 'CA', 'north-america', 'America/Halifax', 'home', '');
      INSERT INTO appliances (id, serial, serial_key, maker, model, rated_input_basis)
        VALUES ('a1', 'TK1', 'TK1', 'Invented maker', 'T 24', 'gross');
      INSERT INTO jobs (id, kind, appliance_id, opened_at, is_chargeable) VALUES ('j1', 'startup', 'a1', '${NOW}', 1);
      INSERT INTO visits (id, site_id, state, planned_on, planned_from, planned_to, duration_min)
        VALUES ('v1', 't1', 'planned', '2026-03-04', '09:00', '12:00', 180);
      INSERT INTO visit_jobs (id, visit_id, job_id) VALUES ('vj1', 'v1', 'j1');
      INSERT INTO visit_crew (id, visit_id, staff_id, role) VALUES ('vc1', 'v1', 's1', 'licensed');
    `);
    migrate(raw, later, NOW);
  });
  afterEach(() => {
    raw.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('keeps every row and adds nothing that was not said', () => {
    expect(raw.prepare('SELECT * FROM visits').get()).toMatchObject({
      planned_from: '09:00',
      planned_to: '12:00',
      start_min: null,
      is_technician_pinned: 0,
      promised_on: null,
      revision: 0,
    });
    expect(raw.prepare('SELECT priority, latest_on, expected_min FROM jobs').get()).toEqual({
      priority: 1,
      latest_on: null,
      expected_min: null,
    });
    expect(raw.prepare('SELECT travel_road_factor, latitude FROM companies').get()).toEqual({
      travel_road_factor: null,
      latitude: null,
    });
    expect(raw.prepare('SELECT base_latitude FROM staff').get()).toEqual({ base_latitude: null });
    expect(raw.prepare('SELECT count(*) FROM visit_crew').pluck().get()).toBe(1);
    expect(raw.pragma('foreign_key_check')).toEqual([]);
  });

  it.each([
    ['hours that end before they begin', "INSERT INTO working_hours VALUES ('h', 's1', 1, 960, 480, NULL, NULL)"],
    ['a break outside the hours', "INSERT INTO working_hours VALUES ('h', 's1', 1, 480, 960, 900, 990)"],
    ['half a break', "INSERT INTO working_hours VALUES ('h', 's1', 1, 480, 960, 720, NULL)"],
    ['an eighth weekday', "INSERT INTO working_hours VALUES ('h', 's1', 8, 480, 960, NULL, NULL)"],
    [
      'an absence that ends before it begins',
      "INSERT INTO absences VALUES ('x', 's1', '2026-03-05', '2026-03-04', NULL, NULL, 'ill', NULL)",
    ],
    [
      'a wasted trip without a known reason',
      `INSERT INTO wasted_trips VALUES ('w', 'v1', 'just because', 0, NULL, 's1', '${NOW}')`,
    ],
  ])('refuses %s', (_what, sql) => {
    expect(() => raw.prepare(sql).run()).toThrow(/CHECK/);
  });
});
