/** Photos of what was found and how it was left: the shut valve, the label. */
import { useRef, useState } from 'react';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { useCore } from '../../operations/CoreAccess.tsx';
import { Thumbnail } from '../items/Thumbnail.tsx';
import { putPhoto } from '../items/takePhotos.ts';
import { useRun } from '../state/RunContext.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import type { MakeSafe } from './useMakeSafes.ts';

export function MakeSafePhoto({ makeSafe }: { readonly makeSafe: MakeSafe }) {
  const { write } = useRun();
  const core = useCore();
  const input = useRef<HTMLInputElement>(null);
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const { makeSafeId, photoIds } = makeSafe;

  const take = async (files: readonly File[]) => {
    setState({ kind: 'saving' });
    for (const file of files) {
      const outcome = await putPhoto(file, core.putFile);
      if (!outcome.ok) return setState({ kind: 'not-saved', why: `${outcome.fileName}: ${outcome.why}` });
      const reply = await write('makeSafes.attachPhoto', { makeSafeId, attachmentId: outcome.attachmentId });
      if (!reply.ok) return setState({ kind: 'not-saved', why: saveErrorWords(reply.error) });
    }
    setState({ kind: 'saved' });
  };
  return (
    <div className="run-make-safe-line">
      <span>Photo</span>
      <div className="run-box-row">
        {photoIds.map((attachmentId, index) => (
          <Thumbnail
            key={attachmentId}
            attachmentId={attachmentId}
            label={`Photo ${index + 1} of what was made safe`}
          />
        ))}
        <input
          ref={input}
          type="file"
          accept="image/jpeg,image/png,.jpg,.jpeg,.png,.heic,.heif"
          multiple
          hidden
          aria-label="Photos of what was made safe"
          onChange={(event) => {
            const files = [...(event.currentTarget.files ?? [])];
            event.currentTarget.value = '';
            if (files.length > 0) void take(files);
          }}
        />
        <button type="button" className="run-button" onClick={() => input.current?.click()}>
          {photoIds.length === 0 ? 'Choose a photo …' : 'Another photo …'}
        </button>
        <FieldSaved state={state} />
      </div>
    </div>
  );
}
