import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

it('lets the days of what was sealed be counted without reading the records', () => {
  const raw = new Database(':memory:');
  raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
  const all = readMigrations(`${APP_ROOT}/db/migrations`);
  const planOf = () =>
    raw
      .prepare("EXPLAIN QUERY PLAN SELECT visit_id, sequence, sha256 FROM seals WHERE sealed_at >= '2026-03-02'")
      .all()
      .map((row) => (row as { detail: string }).detail)
      .join();
  const step = all.findIndex(({ name }) => name.startsWith('0013_'));
  migrate(raw, all.slice(0, step), '2026-03-02T13:00:00.000Z');
  expect(planOf()).not.toMatch(/COVERING INDEX/);
  migrate(raw, all.slice(step, step + 1), '2026-03-02T13:00:00.000Z');
  expect(planOf()).toMatch(/COVERING INDEX seals_by_time/);
  raw.close();
});
