import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

it('keeps every notice that was on file one that shuts firing', () => {
  const raw = new Database(':memory:');
  raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
  const all = readMigrations(`${APP_ROOT}/db/migrations`);
  const step = all.findIndex(({ name }) => name.startsWith('0014_'));
  migrate(raw, all.slice(0, step), NOW);
  raw.exec(`
    INSERT INTO staff (id, name, initials, active_from) VALUES ('s1', 'Tobias Reyle', 'TR', '2020-01-01');
    INSERT INTO recalls (id, title, source, maker, models, serial_ranges, issued_on, what_to_do, added_by_id, added_at)
      VALUES ('r1', 'Tag', 'the maker', 'Invented', '[]', '[]', '2026-01-01', 'Do not use it.', 's1', '${NOW}');
  `);
  migrate(raw, all.slice(step, step + 1), NOW);
  expect(raw.prepare('SELECT may_fire FROM recalls').pluck().all()).toEqual([0]);
  raw.close();
});
