import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('the migration to messages about appointments', () => {
  let raw: Database.Database;
  beforeEach(() => {
    raw = new Database(':memory:');
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    const all = readMigrations(`${APP_ROOT}/db/migrations`);
    const step = all.findIndex(({ name }) => name.startsWith('0008_'));
    migrate(raw, all.slice(0, step), NOW);
    raw.exec(`
      INSERT INTO staff (id, name, initials, active_from) VALUES ('s1', 'Tobias Reyle', 'TR', '2024-01-01');
      INSERT INTO parties (id, kind, name, search_text) VALUES ('p1', 'person', 'Lowri Kestrel', '');
      INSERT INTO message_templates VALUES ('t1', 'service-due', 'letter', 'en', 'Subject', 'Body', 's1', '${NOW}');
      INSERT INTO messages (id, kind, channel, language, party_id, subject, body, prepared_by_id, prepared_at)
        VALUES ('m1', 'service-due', 'letter', 'en', 'p1', 'Subject', 'Body', 's1', '${NOW}');
      INSERT INTO message_events VALUES ('e1', 'm1', 'sent', '2026-03-02', NULL, 's1', '${NOW}');
    `);
    migrate(raw, all.slice(step, step + 1), NOW);
  });
  afterEach(() => raw.close());

  it('keeps wordings, messages and what came of them', () => {
    expect(raw.prepare('SELECT body FROM message_templates').pluck().all()).toEqual(['Body']);
    expect(
      raw.prepare('SELECT m.subject, e.kind FROM messages m JOIN message_events e ON e.message_id = m.id').all(),
    ).toEqual([{ subject: 'Subject', kind: 'sent' }]);
    expect(raw.pragma('foreign_key_check')).toEqual([]);
  });

  it('takes text messages and the new kinds, and no others', () => {
    const template = raw.prepare(
      `INSERT INTO message_templates VALUES ('t2', ?, ?, 'en', 'Subject', 'Body', 's1', '${NOW}')`,
    );
    expect(() => template.run('on-the-way', 'phone')).toThrow(/CHECK/);
    expect(() => template.run('on-the-roof', 'text')).toThrow(/CHECK/);
    template.run('on-the-way', 'text');
    for (const table of ['message_templates', 'messages']) {
      expect(raw.prepare('SELECT sql FROM sqlite_schema WHERE name = ?').pluck().get(table)).toMatch(/STRICT$/);
    }
  });
});
