/** How the visit ends. Anything but finished needs its reason; what is still open is said, and where it is. */
import { useId, useState } from 'react';
import type { z } from 'zod';
import type { ProgressBlocker } from '../../../domain/procedure/progressTypes.ts';
import type { visitOutcome } from '../../../electron/contract/visits.ts';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { useKept } from '../../kit/useKept.ts';
import { plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { AnswerButton } from '../items/AnswerButton.tsx';
import { BlockerList } from '../stage/BlockerList.tsx';
import { useRun } from '../state/RunContext.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';

type Outcome = z.output<typeof visitOutcome>;

const OUTCOMES: readonly (readonly [Outcome, string])[] = [
  ['finished', 'Finished'],
  ['return-needed', 'Return needed'],
  ['site-not-ready', 'Site not ready'],
  ['made-safe', 'Made safe'],
];

export function FinishForm() {
  const { view, analysis, write } = useRun();
  const id = useId();
  const [outcome, setOutcome] = useState<Outcome>(() => (view.record.openMakeSafes > 0 ? 'made-safe' : 'finished'));
  const [reason, setReason] = useKept(`visit-end.${view.visitId}.reason`, '');
  const [minutes, setMinutes] = useKept(`visit-end.${view.visitId}.minutes`, '');
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const [refusedBy, setRefusedBy] = useState<readonly ProgressBlocker[]>([]);
  const openCount = analysis.progress.gates.leaving.length;
  const labourMin = /^\d{1,5}$/.test(minutes.trim()) ? Number(minutes.trim()) : null;
  const hasBadMinutes = minutes.trim() !== '' && labourMin === null;

  const finish = async () => {
    setState({ kind: 'saving' });
    const reply = await write('visits.finish', {
      visitId: view.visitId,
      outcome,
      reason: reason.trim() || null,
      labourMin,
    });
    if (reply.ok) {
      setReason('');
      setMinutes('');
    }
    setRefusedBy(!reply.ok && reply.error.code === 'leaving-blocked' ? reply.error.data.blockers : []);
    setState(reply.ok ? { kind: 'saved' } : { kind: 'not-saved', why: saveErrorWords(reply.error) });
  };
  const keys = useKeys<HTMLFieldSetElement>((event) => {
    const chosen = OUTCOMES[Number(plainKey(event) ?? 0) - 1];
    if (chosen === undefined) return;
    event.preventDefault();
    setOutcome(chosen[0]);
  });
  return (
    <form
      className="run-gate"
      aria-label="End of the visit"
      onSubmit={(event) => {
        event.preventDefault();
        if (!hasBadMinutes) void finish();
      }}
    >
      <h3>The visit ends</h3>
      <fieldset ref={keys} className="run-answers" data-many aria-label="The visit ends" tabIndex={-1}>
        {OUTCOMES.map(([value, label], index) => (
          <AnswerButton
            key={value}
            answerKey={String(index + 1)}
            isGiven={outcome === value}
            onGive={() => setOutcome(value)}
          >
            {label}
          </AnswerButton>
        ))}
      </fieldset>
      <div className="run-make-safe-line">
        <label htmlFor={`${id}-reason`}>{outcome === 'finished' ? 'Note (may stay empty)' : 'Reason (needed)'}</label>
        <input
          id={`${id}-reason`}
          className="run-text"
          data-wide
          type="text"
          autoComplete="off"
          maxLength={4000}
          required={outcome !== 'finished'}
          value={reason}
          onChange={(event) => setReason(event.currentTarget.value)}
        />
      </div>
      <div className="run-make-safe-line">
        <label htmlFor={`${id}-minutes`}>Labour, minutes (may stay empty)</label>
        <input
          id={`${id}-minutes`}
          className="run-text"
          type="text"
          inputMode="numeric"
          autoComplete="off"
          aria-invalid={hasBadMinutes}
          value={minutes}
          onChange={(event) => setMinutes(event.currentTarget.value)}
        />
        {hasBadMinutes ? <span className="run-problem">whole minutes only</span> : null}
      </div>
      {outcome === 'finished' && openCount > 0 ? (
        <p className="run-card-why">
          {openCount} still open above: settle them, or end as return needed, site not ready or made safe.
        </p>
      ) : null}
      <div className="run-box-row">
        <button type="submit" className="run-button run-button-main">
          End the visit
        </button>
        <FieldSaved state={state} />
      </div>
      {refusedBy.length === 0 ? null : <BlockerList blockers={refusedBy} />}
    </form>
  );
}
