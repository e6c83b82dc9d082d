/** Photos of what was found and how it was left: the shut valve, the label. */
import { useRef, useState } from 'react';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { PhotoFiles } from '../../kit/PhotoFiles.tsx';
import { useCore } from '../../operations/CoreAccess.tsx';
import { CameraButton } from '../../photos/CameraButton.tsx';
import { Thumbnail } from '../items/Thumbnail.tsx';
import { putEach } from '../items/takePhotos.ts';
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
    const why = await putEach(files, core.putFile, async (attachmentId) => {
      const reply = await write('makeSafes.attachPhoto', { makeSafeId, attachmentId });
      return reply.ok ? null : saveErrorWords(reply.error);
    });
    setState(why === null ? { kind: 'saved' } : { kind: 'not-saved', why });
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
        <PhotoFiles ref={input} label="Photos of what was made safe" onFiles={(files) => void take(files)} />
        <button type="button" className="run-button" onClick={() => input.current?.click()}>
          {photoIds.length === 0 ? 'Choose a photo …' : 'Another photo …'}
        </button>
        <CameraButton onFiles={(files) => void take(files)} />
        <FieldSaved state={state} />
      </div>
    </div>
  );
}
