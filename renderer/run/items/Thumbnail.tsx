/**
 * A stored photo, small. The small picture is made of the original at its first sight, once, and kept beside it; its bytes
 * come over the file route and are let go of when it is no longer shown.
 */
import { useEffect, useState } from 'react';
import type { FileFound } from '../../../electron/contract/wire.ts';
import { useCore } from '../../operations/CoreAccess.tsx';
import { inTurn, makeSmall, SMALL_ENOUGH_BYTES, toBase64 } from '../../photos/smallPicture.ts';

type Core = ReturnType<typeof useCore>;

export function Thumbnail({ attachmentId, label }: { readonly attachmentId: string; readonly label: string }) {
  const core = useCore();
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let isGone = false;
    void loadSmall(core, attachmentId, () => isGone).then((picture) => {
      if (picture === null || isGone) return;
      made = URL.createObjectURL(picture);
      setUrl(made);
    });
    return () => {
      isGone = true;
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [core, attachmentId]);
  if (url === null) return <span className="run-thumbnail" aria-hidden="true" />;
  return <img className="run-thumbnail" src={url} alt={label} />;
}

async function loadSmall(core: Core, attachmentId: string, isGone: () => boolean): Promise<Blob | null> {
  const known = await core.call('photos.findSmall', { attachmentId });
  if (known.ok && known.value.smallId !== null) {
    const small = await core.getFile(known.value.smallId);
    if (small.ok) return toBlob(small.file);
  }
  // Nobody looks any more: whoever does next has it made.
  return inTurn(async () => (isGone() ? null : makeAndKeep(core, attachmentId)));
}

async function makeAndKeep(core: Core, attachmentId: string): Promise<Blob | null> {
  const original = await core.getFile(attachmentId);
  if (!original.ok) return null;
  if (original.file.bytes.length <= SMALL_ENOUGH_BYTES) return toBlob(original.file);
  const small = await makeSmall(original.file);
  if (small === null) return toBlob(original.file);
  // Where it cannot be kept it is made again next time: nothing is lost.
  void core.call('photos.keepSmall', { attachmentId, jpegBase64: await toBase64(small) });
  return small;
}

function toBlob({ bytes, mediaType }: FileFound): Blob {
  return new Blob([new Uint8Array(bytes)], { type: mediaType });
}
