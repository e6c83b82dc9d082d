/** Photos from files or the camera, several at once; shown small, kept as they are. */
import { useRef, useState } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { PhotoFiles } from '../../kit/PhotoFiles.tsx';
import { useCore } from '../../operations/CoreAccess.tsx';
import { CameraButton } from '../../photos/CameraButton.tsx';
import { RouteLink } from '../../RouteLink.tsx';
import { useRun } from '../state/RunContext.ts';
import { useItemWrites } from '../state/useItemWrites.ts';
import { Thumbnail } from './Thumbnail.tsx';
import { putPhoto } from './takePhotos.ts';

export function PhotoItem({ item, address }: { readonly item: ItemOf<'photo'>; readonly address: ItemAddress }) {
  const { view, saveAndGoOn } = useRun();
  const core = useCore();
  const here = { stepKey: address.stepKey, itemKey: item.key };
  const { ref, state, send } = useItemWrites(here);
  const [putting, setPutting] = useState<SaveState>({ kind: 'idle' });
  const input = useRef<HTMLInputElement>(null);
  const photos = view.record.photos.filter((one) => one.itemKey === item.key);
  const onButton = useRef<HTMLButtonElement>(null);

  const attach = async (files: readonly File[]) => {
    setPutting({ kind: 'saving' });
    for (const file of files) {
      const outcome = await putPhoto(file, core.putFile);
      if (!outcome.ok) {
        setPutting({ kind: 'not-saved', why: `${outcome.fileName}: ${outcome.why}` });
        return;
      }
      if (!(await send('visits.attachPhoto', { ...ref, attachmentId: outcome.attachmentId }))) return;
    }
    setPutting({ kind: 'saved' });
    onButton.current?.focus();
  };
  return (
    <div className="run-note">
      {photos.length === 0 ? null : (
        <ul className="run-photos">
          {photos.map((photo, index) => (
            <li key={photo.attachmentId}>
              <Thumbnail attachmentId={photo.attachmentId} label={`${item.label}, ${index + 1}`} />
              <button
                type="button"
                className="run-button"
                onClick={() => void send('visits.removePhoto', { ...ref, attachmentId: photo.attachmentId })}
              >
                Remove
              </button>
            </li>
          ))}
        </ul>
      )}
      <PhotoFiles ref={input} label={item.label} onFiles={(files) => void attach(files)} />
      <div className="run-box-row">
        {photos.length > 0 ? (
          <button
            ref={onButton}
            type="button"
            className="run-button run-button-main"
            data-main
            onClick={() => void saveAndGoOn(here, async () => true)}
          >
            Go on <KeyHint keys="Enter" />
          </button>
        ) : null}
        <button
          type="button"
          className={photos.length > 0 ? 'run-button' : 'run-button run-button-main'}
          data-main={photos.length === 0 ? true : undefined}
          onClick={() => input.current?.click()}
        >
          {photos.length > 0 ? 'Add another photo' : 'Choose the photo'}
          {photos.length > 0 ? null : (
            <>
              {' '}
              <KeyHint keys="Enter" />
            </>
          )}
        </button>
        <CameraButton onFiles={(files) => void attach(files)} />
        {photos.length === 0 ? (
          <button type="button" className="run-button" onClick={() => void saveAndGoOn(here, async () => true)}>
            Later, by cable
          </button>
        ) : null}
        <RouteLink to="photos" params={{ visitId: view.visitId, runId: view.runId }} className="run-button">
          Several from a camera
        </RouteLink>
        <FieldSaved state={putting.kind === 'idle' ? state : putting} />
      </div>
    </div>
  );
}
