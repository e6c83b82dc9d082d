/** Queries over attachments; the bytes are in the files beside the store. */
import type { Database } from 'better-sqlite3';
import { and, eq, isNull, sql } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
import { attachmentLinks, attachments } from './schema/index.ts';

export type AttachmentRow = typeof attachments.$inferSelect;

export function findAttachment(db: ReadableDb, attachmentId: string): AttachmentRow | undefined {
  return db.select().from(attachments).where(eq(attachments.id, attachmentId)).get();
}

/** The files that the store speaks of, each once. */
export function listAttachmentHashes(raw: Database): readonly string[] {
  return rawStatement(raw, 'SELECT DISTINCT sha256 FROM attachments').pluck().all() as string[];
}

/** What is made of a photo to be shown small. */
export const SMALL_PICTURE = 'small-picture';

export function findSmallPicture(db: ReadableDb, attachmentId: string): string | undefined {
  return db
    .select({ id: attachments.id })
    .from(attachments)
    .where(
      and(
        eq(attachments.derivedFromId, attachmentId),
        eq(attachments.subject, SMALL_PICTURE),
        isNull(attachments.erasedAt),
      ),
    )
    .get()?.id;
}

/** Files that belong to a row, in the order they were taken in. */
export function listLinkedFiles(db: ReadableDb, entity: string, entityId: string): readonly string[] {
  return (
    db
      .select({ attachmentId: attachmentLinks.attachmentId })
      .from(attachmentLinks)
      .where(
        and(
          eq(attachmentLinks.entity, entity),
          eq(attachmentLinks.entityId, entityId),
          isNull(attachmentLinks.removedAt),
        ),
      )
      // As they were stored: two ids of one millisecond are in no order.
      .orderBy(sql`rowid`)
      .all()
      .map(({ attachmentId }) => attachmentId)
  );
}
