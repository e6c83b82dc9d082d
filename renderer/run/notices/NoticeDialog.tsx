/** One notice in its own words, and what was found here: settled by a licensed person with the reason. */
import { useId, useState } from 'react';
import type { OpenNotice, RecallOutcome } from '../../../domain/recalls/openNotices.ts';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useKept } from '../../kit/useKept.ts';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { NoticeDoubts, refusedWords } from '../../recalls/OpenNoticeNote.tsx';
import { OUTCOME_WORDS } from '../../recalls/recallWords.ts';
import { plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { AnswerButton } from '../items/AnswerButton.tsx';
import { useRun } from '../state/RunContext.ts';
import { Dialog } from '../stop/Dialog.tsx';
import { saveErrorWords } from '../words/saveErrorWords.ts';

const OUTCOMES: readonly RecallOutcome[] = ['done', 'not-affected', 'refused'];

export function NoticeDialog({ notice, onClose }: { readonly notice: OpenNotice; readonly onClose: () => void }) {
  const { view, write } = useRun();
  const { today } = useAppStatus();
  const id = useId();
  const applianceId = view.visit.jobs.find((job) => job.runId === view.runId)?.applianceId ?? '';
  const [reason, setReason] = useKept(`settle.${notice.recallId}.${applianceId}.note`, '');
  const [outcome, setOutcome] = useState<RecallOutcome>('done');
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const keys = useKeys<HTMLFieldSetElement>((event) => {
    const chosen = OUTCOMES[Number(plainKey(event) ?? 0) - 1];
    if (chosen === undefined) return;
    event.preventDefault();
    setOutcome(chosen);
  });
  const settle = async () => {
    setState({ kind: 'saving' });
    const { recallId } = notice;
    const reply = await write('recalls.settle', {
      recallId,
      applianceId,
      outcome,
      on: today,
      note: reason.trim() || null,
    });
    if (!reply.ok) {
      setState({ kind: 'not-saved', why: saveErrorWords(reply.error) });
      return;
    }
    setReason('');
    onClose();
  };
  return (
    <Dialog label={notice.title} tone={notice.mayFire ? 'plain' : 'ember'} onEscape={onClose}>
      <div className="run-stop-head">
        <h2>{notice.title}</h2>
        <button type="button" className="run-button" onClick={onClose}>
          Back to the run <KeyHint keys="Esc" />
        </button>
      </div>
      <p>
        {notice.number === null ? '' : `${notice.number}, `}
        {notice.source}: {notice.whatToDo}
      </p>
      <p>
        <NoticeDoubts notice={notice} /> {refusedWords(notice)}
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void settle();
        }}
      >
        <fieldset ref={keys} className="run-answers" data-many aria-label="What was done" tabIndex={-1} data-first>
          {OUTCOMES.map((value, index) => (
            <AnswerButton
              key={value}
              answerKey={String(index + 1)}
              isGiven={outcome === value}
              onGive={() => setOutcome(value)}
            >
              {OUTCOME_WORDS[value]}
            </AnswerButton>
          ))}
        </fieldset>
        <div className="run-make-safe-line">
          <label htmlFor={id}>What was found, what was done, and how it was checked</label>
          <input
            id={id}
            className="run-text"
            data-wide
            type="text"
            autoComplete="off"
            maxLength={4000}
            required={outcome !== 'refused'}
            value={reason}
            onChange={(event) => setReason(event.currentTarget.value)}
          />
        </div>
        {outcome === 'refused' && !notice.mayFire ? (
          <p className="run-card-why">It stays shut: what the owner refuses is still open.</p>
        ) : null}
        <div className="run-box-row">
          <button type="submit" className="run-button run-button-main">
            Settle the notice
          </button>
          <FieldSaved state={state} />
        </div>
      </form>
    </Dialog>
  );
}
