/** A list that somebody brought, read from the file kept of it; refused with its reason when it is no table. */
import { findAttachment } from '../../../db/attachments.ts';
import { fail, type HandlerContext, notFound } from '../handler.ts';
import { readTable, type Table } from './readTable.ts';

export async function attachedTable(
  context: HandlerContext,
  input: { readonly attachmentId: string; readonly sheetName: string | null },
): Promise<{ readonly table: Table; readonly fileName: string; readonly sha256: string }> {
  const attachment = findAttachment(context.db, input.attachmentId);
  const bytes = attachment === undefined ? null : context.services.attachments.get(attachment.sha256);
  if (attachment === undefined || bytes === null) return notFound('attachments', input.attachmentId);
  const read = await readTable(bytes, input.sheetName);
  if (!read.ok) return fail('table-not-read', read.error);
  return { table: read.value, fileName: attachment.fileName, sha256: attachment.sha256 };
}
