/** Hands photos to the core as they are: nothing is shrunk or turned, and a format nobody else can open is refused here. */
import type { PutFileReply } from '../../../electron/contract/wire.ts';

export type PhotoOutcome =
  | { readonly ok: true; readonly attachmentId: string }
  | { readonly ok: false; readonly fileName: string; readonly why: string };

type PutFile = (file: {
  readonly bytes: Uint8Array;
  readonly mediaType: string;
  readonly fileName: string;
  readonly takenAt: string | null;
}) => Promise<PutFileReply>;

export async function putPhoto(file: File, putFile: PutFile): Promise<PhotoOutcome> {
  const refused = refusedBecause(file);
  if (refused !== null) return { ok: false, fileName: file.name, why: refused };
  const reply = await putFile({
    bytes: new Uint8Array(await file.arrayBuffer()),
    mediaType: mediaTypeOf(file),
    fileName: file.name,
    // A picture file is written when it is taken; the camera's own time in it is read by the core.
    takenAt: new Date(file.lastModified).toISOString(),
  });
  return reply.ok
    ? { ok: true, attachmentId: reply.attachmentId }
    : { ok: false, fileName: file.name, why: WHY[reply.code] };
}

/** One after the other: each is in the store before `attach` puts it where it belongs; the first that fails ends it and says why. */
export async function putEach(
  files: readonly File[],
  putFile: PutFile,
  attach: (attachmentId: string) => Promise<string | null>,
): Promise<string | null> {
  for (const file of files) {
    const outcome = await putPhoto(file, putFile);
    if (!outcome.ok) return `${outcome.fileName}: ${outcome.why}`;
    const why = await attach(outcome.attachmentId);
    if (why !== null) return why;
  }
  return null;
}

export function refusedBecause(file: Pick<File, 'name' | 'type'>): string | null {
  if (/\.(heic|heif)$/i.test(file.name) || /hei[cf]/i.test(file.type)) {
    return 'HEIC pictures cannot be opened everywhere. Set the phone’s camera to JPEG (“most compatible”) and take it again, or send it as JPEG.';
  }
  return mediaTypeOf(file) === '' ? 'Only JPEG and PNG pictures are taken.' : null;
}

function mediaTypeOf(file: Pick<File, 'name' | 'type'>): string {
  if (/^image\/(jpeg|png)$/.test(file.type)) return file.type;
  if (/\.jpe?g$/i.test(file.name)) return 'image/jpeg';
  return /\.png$/i.test(file.name) ? 'image/png' : '';
}

const WHY = {
  'not-signed-in': 'Nobody is signed in.',
  'too-large': 'The file is too large (more than 64 MB).',
  'type-refused': 'This is no JPEG or PNG picture inside.',
  'not-saved': 'The disk did not take it. Nothing was stored.',
  internal: 'Something went wrong in the program itself.',
  offline: 'The program’s core does not answer.',
} as const;
