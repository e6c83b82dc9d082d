/** Hands a file to the person: the browser's or the shell's own "save as". */
import type { Transport } from '../transport/Transport.ts';

export type DownloadProblem = 'not-found' | 'internal' | 'offline';

/** Null when it went well. */
export async function downloadAttachment(core: Transport, attachmentId: string): Promise<DownloadProblem | null> {
  const reply = await core.getFile(attachmentId);
  if (!reply.ok) return reply.code;
  saveBytes(reply.file.bytes, reply.file.mediaType, reply.file.fileName);
  return null;
}

export function saveText(text: string, mediaType: string, fileName: string): void {
  saveBytes(new TextEncoder().encode(text), mediaType, fileName);
}

function saveBytes(bytes: Uint8Array, mediaType: string, fileName: string): void {
  const address = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The save starts after this turn; the bytes must outlive it.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
