/** A make-safe is closed by a licensed person only, with the reason it may run again. */
import { useId, useState } from 'react';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { useKept } from '../../kit/useKept.ts';
import { useRun } from '../state/RunContext.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import type { MakeSafe } from './useMakeSafes.ts';

export function CloseMakeSafe({ makeSafe, onClosed }: { readonly makeSafe: MakeSafe; readonly onClosed: () => void }) {
  const { write, view, signedIn } = useRun();
  const id = useId();
  // Typed with a gas valve in the other hand: looking at the run once more must not lose it.
  const [reason, setReason] = useKept(`close-make-safe.${makeSafe.makeSafeId}`, '');
  const [isAsking, setIsAsking] = useState(reason !== '');
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const isLicensed = view.people.some((person) => person.staffId === signedIn.staffId && person.isLicensed);
  if (!isLicensed) return <p className="lo-faint">A licensed person closes it, with the reason.</p>;
  if (!isAsking) {
    return (
      <button type="button" className="run-button" onClick={() => setIsAsking(true)}>
        Cause found and put right: close it …
      </button>
    );
  }
  return (
    <form
      className="run-make-safe-line"
      onSubmit={(event) => {
        event.preventDefault();
        if (reason.trim() === '') return;
        setState({ kind: 'saving' });
        void write('makeSafes.close', { makeSafeId: makeSafe.makeSafeId, reason: reason.trim() }).then((reply) => {
          if (reply.ok) {
            setReason('');
            onClosed();
          } else setState({ kind: 'not-saved', why: saveErrorWords(reply.error) });
        });
      }}
    >
      <label htmlFor={id}>Cause, what was put right, and how it was checked</label>
      <input
        id={id}
        className="run-text"
        data-wide
        type="text"
        autoComplete="off"
        maxLength={300}
        value={reason}
        ref={(input) => input?.focus()}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      <div className="run-box-row">
        <button type="submit" className="run-button" disabled={reason.trim() === ''}>
          Close the make-safe
        </button>
        <FieldSaved state={state} />
      </div>
    </form>
  );
}
