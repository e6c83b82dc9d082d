/** Model sheets with every revision ever used: a run keeps the one it ran with, and triggers keep each as it was published. */
import { sql } from 'drizzle-orm';
import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import type { SheetEdit } from '../../domain/procedure/sheetEdit.ts';
import { instant, isJson, json, primaryId, rule } from './columns.ts';
import { staff } from './people.ts';

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

/** A sheet being written: what it began as, and where it ended. What it says is that beginning with its edits done in order. */
export const sheetDrafts = sqliteTable(
  'sheet_drafts',
  {
    id: primaryId(),
    /** The revision it began as. */
    fromRevisionId: text('from_revision_id')
      .notNull()
      .references(() => sheetRevisions.id, { onDelete: 'restrict' }),
    startedById: text('started_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    startedAt: instant('started_at').notNull(),
    publishedRevisionId: text('published_revision_id').references(() => sheetRevisions.id, { onDelete: 'restrict' }),
    discardedAt: instant('discarded_at'),
  },
  (t) => [
    index('sheet_drafts_by_start').on(t.fromRevisionId),
    rule('sheet_drafts_one_end', sql`${t.publishedRevisionId} IS NULL OR ${t.discardedAt} IS NULL`),
  ],
);

/** One change of a draft, as small as what was typed: the sheet itself is large. Taken back, it stays on file. */
export const sheetDraftEdits = sqliteTable(
  'sheet_draft_edits',
  {
    id: primaryId(),
    draftId: text('draft_id')
      .notNull()
      .references(() => sheetDrafts.id, { onDelete: 'restrict' }),
    position: integer('position').notNull(),
    edit: json<SheetEdit>('edit').notNull(),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    at: instant('at').notNull(),
    undoneAt: instant('undone_at'),
  },
  (t) => [
    uniqueIndex('sheet_draft_edits_once').on(t.draftId, t.position),
    isJson('sheet_draft_edits_edit', t.edit),
    rule('sheet_draft_edits_position', sql`${t.position} >= 1`),
  ],
);
