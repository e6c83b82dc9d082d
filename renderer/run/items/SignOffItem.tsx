/** A name under the record. The licensed person signs as whoever is signed in; the occupant types theirs. */
import { useId, useState } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { instantWords } from '../../kit/dayWords.ts';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { Note } from '../../kit/Note.tsx';
import { useCore } from '../../operations/CoreAccess.tsx';
import { useField } from '../field/useField.ts';
import { plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { useRun } from '../state/RunContext.ts';
import { useItemWrites } from '../state/useItemWrites.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import { SignaturePad, signaturePicture } from './SignaturePad.tsx';
import { isSignature, type Strokes } from './strokes.ts';
import { putPhoto } from './takePhotos.ts';

type Props = { readonly item: ItemOf<'sign-off'>; readonly address: ItemAddress };

export function SignOffItem({ item, address }: Props) {
  const { view } = useRun();
  const signOff = view.record.signOffs.findLast((one) => one.itemKey === item.key);
  const here = { stepKey: address.stepKey, itemKey: item.key };
  return (
    <div className="run-note">
      {signOff === undefined ? null : (
        <p className="run-card-hint">
          Signed by <b>{signOff.name}</b>, {instantWords(signOff.at, view.record.site.timeZone)}. Signing again replaces
          it.
        </p>
      )}
      {item.by === 'licensed' ? <LicensedSigns address={here} /> : <OccupantSigns address={here} label={item.label} />}
    </div>
  );
}

function LicensedSigns({ address }: { readonly address: ItemAddress }) {
  const { view, signedIn, saveAndGoOn } = useRun();
  const { ref, state, send } = useItemWrites(address);
  const isLicensed = view.people.some((person) => person.staffId === signedIn.staffId && person.isLicensed);
  const sign = () =>
    void saveAndGoOn(address, () =>
      send('visits.signOff', { ...ref, name: signedIn.name, signatureAttachmentId: null }),
    );
  const keys = useKeys<HTMLFieldSetElement>((event) => {
    if (plainKey(event) !== 's') return;
    event.preventDefault();
    sign();
  });
  if (!isLicensed) {
    return (
      <Note tone="caution">
        {signedIn.name} has no licence valid here today. The licensed person signs in and signs.
      </Note>
    );
  }
  return (
    // A key of its own: an Enter too many must not sign.
    <fieldset ref={keys} className="run-box-row" aria-labelledby={`label-${address.itemKey}`} tabIndex={-1} data-main>
      <button type="button" className="run-button run-button-main" aria-keyshortcuts="S" onClick={sign}>
        <KeyHint keys="S" /> Sign as {signedIn.name}
      </button>
      <FieldSaved state={state} />
    </fieldset>
  );
}

function OccupantSigns({ address, label }: { readonly address: ItemAddress; readonly label: string }) {
  const { view, write, saveAndGoOn } = useRun();
  const id = useId();
  const core = useCore();
  const [strokes, setStrokes] = useState<Strokes>([]);
  const stored = view.record.signOffs.findLast((one) => one.itemKey === address.itemKey)?.name ?? '';
  /** The drawing goes in before the name that points to it. */
  const keepDrawing = async () => {
    if (!isSignature(strokes)) return { ok: true, attachmentId: null } as const;
    const picture = await signaturePicture(strokes);
    if (picture === null) return { ok: false, why: 'The drawing could not be made into a picture.' } as const;
    const outcome = await putPhoto(picture, core.putFile);
    return outcome.ok ? outcome : ({ ok: false, why: outcome.why } as const);
  };
  const field = useField({
    address,
    box: 'name',
    label,
    stored,
    save: async (text) => {
      const drawn = await keepDrawing();
      if (!drawn.ok) return drawn;
      const reply = await write('visits.signOff', {
        visitId: view.visitId,
        runId: view.runId,
        ...address,
        name: text.trim(),
        signatureAttachmentId: drawn.attachmentId,
      });
      return reply.ok ? { ok: true } : { ok: false, why: saveErrorWords(reply.error) };
    },
  });
  return (
    <>
      <SignaturePad label="Signature, drawn (may stay empty)" strokes={strokes} onStrokes={setStrokes} />
      <label htmlFor={id}>Name, typed by the occupant: “I was shown this and have had the papers”</label>
      <div className="run-box-row">
        <input
          id={id}
          className="run-text"
          data-wide
          data-main
          type="text"
          autoComplete="off"
          maxLength={300}
          value={field.text}
          onChange={(event) => field.type(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || field.text.trim() === '') return;
            event.preventDefault();
            void saveAndGoOn(address, field.commit);
          }}
        />
        <FieldSaved state={field.state} />
      </div>
    </>
  );
}
