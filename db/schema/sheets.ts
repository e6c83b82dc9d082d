/** Model sheets with every revision ever used: a run keeps the one it ran with. */
import { sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { instant, json, primaryId } from './columns.ts';

export const sheetRevisions = sqliteTable(
  'sheet_revisions',
  {
    id: primaryId(),
    sheetId: text('sheet_id').notNull(),
    revision: text('revision').notNull(),
    title: text('title').notNull(),
    maker: text('maker'),
    body: json<unknown>('body').notNull(),
    /** SHA-256 of the canonical body: the same revision cannot mean two things. */
    sha256: text('sha256').notNull(),
    addedAt: instant('added_at').notNull(),
    source: text('source').notNull(),
  },
  (t) => [uniqueIndex('sheet_revisions_once').on(t.sheetId, t.revision)],
);
