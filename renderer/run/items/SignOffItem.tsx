/** A name under the record. The licensed person signs as whoever is signed in; the occupant types theirs. */
import { useId, useState } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import { instantWords } from '../../kit/dayWords.ts';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { Note } from '../../kit/Note.tsx';
import { useField } from '../field/useField.ts';
import { plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { useRun } from '../state/RunContext.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import { SignaturePad } from './SignaturePad.tsx';
import { useDrawing } from './useDrawing.ts';

type Props = { readonly item: ItemOf<'sign-off'>; readonly address: ItemAddress };

export function SignOffItem({ item, address }: Props) {
  const { view } = useRun();
  const signOff = view.record.signOffs.findLast((one) => one.itemKey === item.key);
  const here = { stepKey: address.stepKey, itemKey: item.key };
  return (
    <div className="run-note">
      {signOff === undefined ? null : (
        <p className="run-card-hint">
          Signed by <b>{signOff.name}</b>, {instantWords(signOff.at, view.record.site.timeZone)}
          {signOff.signatureSha256 === undefined ? '' : ', with a drawn signature'}. Signing again replaces it.
        </p>
      )}
      {item.by === 'licensed' ? (
        <LicensedSigns address={here} label={item.label} />
      ) : (
        <OccupantSigns address={here} label={item.label} />
      )}
    </div>
  );
}

function LicensedSigns({ address, label }: { readonly address: ItemAddress; readonly label: string }) {
  const { view, signedIn, write, saveAndGoOn } = useRun();
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const drawing = useDrawing(address, label);
  const [isDrawing, setIsDrawing] = useState(drawing.strokes.length > 0);
  const isLicensed = view.people.some((person) => person.staffId === signedIn.staffId && person.isLicensed);
  const save = async (): Promise<boolean> => {
    setState({ kind: 'saving' });
    const drawn = await drawing.keep();
    const reply = drawn.ok
      ? await write('visits.signOff', {
          visitId: view.visitId,
          runId: view.runId,
          ...address,
          name: signedIn.name,
          signatureAttachmentId: drawn.attachmentId,
        })
      : null;
    if (reply?.ok === true) drawing.forget();
    const why = drawn.ok ? (reply?.ok === false ? saveErrorWords(reply.error) : null) : drawn.why;
    setState(why === null ? { kind: 'saved' } : { kind: 'not-saved', why });
    return why === null;
  };
  const sign = () => void saveAndGoOn(address, save);
  const keys = useKeys<HTMLFieldSetElement>((event) => {
    if (plainKey(event) !== 's') return;
    event.preventDefault();
    sign();
  });
  if (!isLicensed) {
    return (
      <Note tone="caution">
        {signedIn.name} has no licence valid for this visit. The licensed person takes over with{' '}
        <KeyHint keys="Alt+W" /> and their PIN, and signs.
      </Note>
    );
  }
  const others = othersIn(view.record, signedIn.staffId).map(
    (staffId) => view.people.find((person) => person.staffId === staffId)?.name ?? 'somebody else',
  );
  return (
    <>
      <p className="run-card-hint">
        {others.length === 0
          ? ''
          : `What ${others.join(' and ')} measured or answered in this run is signed for as well. `}
        Not {signedIn.name}? <KeyHint keys="Alt+W" /> switches, with a PIN.
      </p>
      {isDrawing ? <SignaturePad label={PAD_LABEL} strokes={drawing.strokes} onStrokes={drawing.change} /> : null}
      {/* A key of its own: an Enter too many must not sign. */}
      <fieldset ref={keys} className="run-box-row" aria-labelledby={`label-${address.itemKey}`} tabIndex={-1} data-main>
        <button type="button" className="run-button run-button-main" aria-keyshortcuts="S" onClick={sign}>
          <KeyHint keys="S" /> Sign as {signedIn.name}
        </button>
        {isDrawing ? null : (
          <button
            type="button"
            className="run-button"
            onClick={() => {
              setIsDrawing(true);
              // The button goes away; its key goes on signing.
              keys.current?.focus({ preventScroll: true });
            }}
          >
            Draw the signature as well …
          </button>
        )}
        <FieldSaved state={state} />
      </fieldset>
    </>
  );
}

const PAD_LABEL = 'Sign here with finger, pen or mouse (may stay empty)';

/** Whose work stands in the run besides that of the one who signs. */
function othersIn(record: Pick<RunRecord, 'readings' | 'answers'>, signerId: string): readonly string[] {
  const by = [...record.readings.map(({ measuredById }) => measuredById), ...record.answers.map(({ byId }) => byId)];
  return [...new Set(by)].filter((staffId) => staffId !== signerId);
}

function OccupantSigns({ address, label }: { readonly address: ItemAddress; readonly label: string }) {
  const { view, write, saveAndGoOn } = useRun();
  const id = useId();
  const drawing = useDrawing(address, label);
  const stored = view.record.signOffs.findLast((one) => one.itemKey === address.itemKey)?.name ?? '';
  const field = useField({
    address,
    box: 'name',
    label,
    stored,
    save: async (text) => {
      const drawn = await drawing.keep();
      if (!drawn.ok) return drawn;
      const reply = await write('visits.signOff', {
        visitId: view.visitId,
        runId: view.runId,
        ...address,
        name: text.trim(),
        signatureAttachmentId: drawn.attachmentId,
      });
      if (reply.ok) drawing.forget();
      return reply.ok ? { ok: true } : { ok: false, why: saveErrorWords(reply.error) };
    },
  });
  return (
    <>
      <SignaturePad
        label={PAD_LABEL}
        strokes={drawing.strokes}
        onStrokes={(change) => {
          drawing.change(change);
          // The same name with a drawing under it is signed anew.
          if (field.text.trim() !== '') field.type(field.text);
        }}
      />
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
        <button
          type="button"
          className="run-button"
          disabled={field.text.trim() === ''}
          onClick={() => void saveAndGoOn(address, field.commit)}
        >
          Sign <KeyHint keys="Enter" />
        </button>
        <FieldSaved state={field.state} />
      </div>
    </>
  );
}
