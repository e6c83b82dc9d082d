/** The visit ended with something left open: what is read now belongs to a return trip. */
import { ErrorText } from '../../kit/ErrorText.tsx';
import { OUTCOME_WORDS } from '../../kit/tradeWords.ts';
import { useAct } from '../../operations/useAct.ts';
import { goTo } from '../../route.ts';
import { useRun } from '../state/RunContext.ts';

export function EndedStrip() {
  const { view, isSealed } = useRun();
  const begin = useAct('visits.beginReturn');
  const { outcome } = view.visit;
  if (outcome === null || outcome === 'finished' || isSealed) return null;
  return (
    <div className="run-strip" data-tone="ember" role="status">
      <strong>This visit has ended: {OUTCOME_WORDS[outcome]}. Nothing more is recorded in it.</strong>
      <ErrorText error={begin.error} />
      <button
        type="button"
        className="run-button"
        aria-busy={begin.isBusy}
        onClick={() =>
          void begin.act({ visitId: view.visitId }).then((reply) => {
            if (reply.ok) goTo('run', { visitId: reply.value.visitId, runId: view.runId });
          })
        }
      >
        Begin the return trip
      </button>
    </div>
  );
}
