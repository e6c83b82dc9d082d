/** A stored picture, small. Its bytes come over the file route and are let go of when it is no longer shown. */
import { useEffect, useState } from 'react';
import { useCore } from '../../operations/CoreAccess.tsx';

export function Thumbnail({ attachmentId, label }: { readonly attachmentId: string; readonly label: string }) {
  const core = useCore();
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let isGone = false;
    void core.getFile(attachmentId).then((reply) => {
      if (!reply.ok || isGone) return;
      made = URL.createObjectURL(new Blob([new Uint8Array(reply.file.bytes)], { type: reply.file.mediaType }));
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
