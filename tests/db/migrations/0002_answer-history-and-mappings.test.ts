import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { migrate, pendingMigrations, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';
const NAME = '0002_answer-history-and-mappings.sql';

describe(NAME, () => {
  it('keeps every answer that was there and lets an item be answered again', () => {
    const raw = new Database(':memory:');
    const all = readMigrations(`${APP_ROOT}/db/migrations`);
    migrate(
      raw,
      pendingMigrations(raw, all).filter(({ name }) => name < NAME),
      NOW,
    );
    // Only this table's own rows matter here; what they point to is left out.
    raw.pragma('foreign_keys = OFF');
    const insert = 'INSERT INTO run_answers (id, run_id, visit_id, step_key, item_key, value, reason, by_id, at)';
    raw.exec(`${insert} VALUES ('a1', 'r', 'v', 's', 'spillage', 'spills', NULL, 'p', '${NOW}')`);
    const again = `${insert} VALUES ('a2', 'r', 'v', 's', 'spillage', 'none', 'read again', 'q', '${NOW}')`;
    expect(() => raw.exec(again)).toThrow(/UNIQUE/);
    const sql = all.find(({ name }) => name === NAME)?.sql ?? '';
    for (const statement of sql.split('--> statement-breakpoint')) raw.exec(statement);
    raw.exec(again);
    expect(raw.prepare('SELECT id, value, instrument_id FROM run_answers ORDER BY id').all()).toEqual([
      { id: 'a1', value: 'spills', instrument_id: null },
      { id: 'a2', value: 'none', instrument_id: null },
    ]);
    const keys = raw.pragma('foreign_key_list(run_answers)') as { table: string; on_delete: string }[];
    expect(keys.find((key) => key.table === 'instruments')?.on_delete).toBe('RESTRICT');
    const plan = raw
      .prepare('EXPLAIN QUERY PLAN SELECT * FROM run_answers WHERE run_id = ? AND item_key = ?')
      .all('', '');
    expect(JSON.stringify(plan)).toContain('run_answers_by_item');
    expect(() => raw.exec("INSERT INTO instrument_mappings VALUES ('m', 'i', 'not json')")).toThrow(/CHECK/);
    raw.close();
  });
});
