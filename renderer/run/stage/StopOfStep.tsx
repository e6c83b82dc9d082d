/** A stop found in this very step shuts it: the one way on is the make-safe, and it stands where the answer stood. */
import { KeyHint } from '../../kit/KeyHint.tsx';
import { Note } from '../../kit/Note.tsx';
import { useRun } from '../state/RunContext.ts';
import { stopsOf } from '../stop/stopsOf.ts';

export function StopOfStep({ stepKey }: { readonly stepKey: string }) {
  const { view, analysis, makeSafe } = useRun();
  const stop = stopsOf(view, analysis).find((one) => one.at?.stepKey === stepKey);
  if (stop === undefined) return null;
  const isOpen = view.record.openMakeSafes > 0;
  return (
    <div className="run-stop-of-step">
      <Note
        tone="ember"
        title={`Burner off: ${stop.what}`}
        action={
          isOpen ? undefined : (
            <button type="button" className="run-button" onClick={() => makeSafe(stop.what)}>
              Make safe: record it now <KeyHint keys="F8" />
            </button>
          )
        }
      >
        {isOpen ? 'F8 shows the make-safe. ' : ''}
        When a licensed person has closed it with the cause, this step opens again and it is read anew. Only typed
        wrongly? Then that is what to write when closing it.
      </Note>
    </div>
  );
}
