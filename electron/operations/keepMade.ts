/** Keeps a file that the program made itself, to be given out: the bytes first, so that no row points to bytes that are not there. */
import { attachments } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { actorOf, type HandlerContext } from './handler.ts';

export type MadeFile = {
  readonly bytes: Uint8Array;
  readonly fileName: string;
  readonly mediaType: 'application/pdf' | 'application/zip' | 'image/jpeg' | 'text/csv' | 'text/plain';
};

export function keepMade(
  context: HandlerContext,
  made: MadeFile & {
    /** What it is. */
    readonly subject: string;
    /** The file it shows: erased together with it. */
    readonly derivedFromId?: string;
    readonly takenAt?: string | null;
  },
  /** What else belongs to it, in the same transaction. */
  onKept: (writer: StoreWriter, attachmentId: string) => void = () => {},
): string {
  const { bytes, ...what } = made;
  const { sha256 } = context.services.attachments.put(bytes);
  return context.write((writer) => {
    const attachmentId = writer.insert(attachments, {
      ...what,
      sha256,
      byteLength: bytes.length,
      origin: 'derived',
      addedById: actorOf(context).staffId,
      addedAt: context.now,
    });
    onKept(writer, attachmentId);
    return attachmentId;
  });
}
