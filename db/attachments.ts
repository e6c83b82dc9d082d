/** Queries over attachments; the bytes are in the files beside the store. */
import { eq } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { attachments } from './schema/index.ts';

export type AttachmentRow = typeof attachments.$inferSelect;

export function findAttachment(db: ReadableDb, attachmentId: string): AttachmentRow | undefined {
  return db.select().from(attachments).where(eq(attachments.id, attachmentId)).get();
}
