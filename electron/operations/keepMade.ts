/** Keeps a file that the program made itself, to be given out: the bytes first, so that no row points to bytes that are not there. */
import { attachments } from '../../db/schema/index.ts';
import { actorOf, type HandlerContext } from './handler.ts';

export function keepMade(
  context: HandlerContext,
  made: {
    readonly bytes: Uint8Array;
    readonly mediaType: 'application/pdf' | 'application/zip';
    readonly fileName: string;
    /** What it is. */
    readonly subject: string;
  },
): string {
  const { bytes, ...what } = made;
  const { sha256 } = context.services.attachments.put(bytes);
  return context.write((writer) =>
    writer.insert(attachments, {
      ...what,
      sha256,
      byteLength: bytes.length,
      origin: 'derived',
      addedById: actorOf(context).staffId,
      addedAt: context.now,
    }),
  );
}
