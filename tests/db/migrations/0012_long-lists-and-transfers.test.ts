import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

it('adds where long lists and handed-over houses are kept, and touches nothing that was on file', () => {
  const raw = new Database(':memory:');
  raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
  const all = readMigrations(`${APP_ROOT}/db/migrations`);
  const step = all.findIndex(({ name }) => name.startsWith('0012_'));
  migrate(raw, all.slice(0, step), NOW);
  raw.exec(`
    INSERT INTO staff (id, name, initials, active_from) VALUES ('s1', 'Tobias Reyle', 'TR', '2020-01-01');
    INSERT INTO parties (id, kind, name, search_text) VALUES ('p1', 'person', 'Lowri Kestrel', 'lowri kestrel');
    INSERT INTO customers (id, party_id, since) VALUES ('c1', 'p1', '2025-01-01');
    INSERT INTO sites (id, customer_id, street, city, country, jurisdiction, time_zone, building_kind, search_text)
      VALUES ('h1', 'c1', '9 Fathom Street', 'Graven Bay', 'CA', 'north-america', 'America/Halifax', 'home', '');
  `);
  migrate(raw, all.slice(step, step + 1), NOW);
  expect(raw.prepare('SELECT customer_id FROM sites').pluck().all()).toEqual(['c1']);
  raw.exec("INSERT INTO list_works VALUES ('w1', 'take-in', 'list.csv', 's1', '2026-03-02T13:00:00.000Z')");
  const transfer = raw.prepare(
    `INSERT INTO site_transfers VALUES ('t1', 'h1', '2026-03-01', 'c1', 'c1', '{"ended":[],"added":[]}', 's1', '${NOW}', ?, ?, ?)`,
  );
  expect(() => transfer.run(NOW, 's1', null), 'taken back without a reason').toThrow(/CHECK/);
  transfer.run(null, null, null);
  expect(() => raw.exec("INSERT INTO list_works VALUES ('w2', 'other', 'list.csv', 's1', '')")).toThrow(/CHECK/);
  expect(raw.pragma('foreign_key_check')).toEqual([]);
  raw.close();
});
