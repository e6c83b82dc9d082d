/** A stop takes over the screen and says how to make safe. Acting comes first; one key records it, words come afterwards. */
import { KeyHint } from '../../kit/KeyHint.tsx';
import { VerdictMark } from '../../kit/VerdictMark.tsx';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { useRun } from '../state/RunContext.ts';
import { Dialog } from './Dialog.tsx';
import type { Stop } from './stopsOf.ts';

export function StopTakeover({
  stop,
  onMakeSafe,
  onLookAgain,
}: {
  readonly stop: Stop;
  readonly onMakeSafe: () => void;
  readonly onLookAgain: () => void;
}) {
  const { company } = useAppStatus();
  const { goTo } = useRun();
  const lookAgain = () => {
    onLookAgain();
    if (stop.at !== null) goTo(stop.at);
  };
  return (
    <Dialog label={`Stop: ${stop.what}`} tone="ember" onEscape={lookAgain}>
      <div className="run-stop-head">
        <VerdictMark verdict="stop" size="lg" />
        {/* Not a button: the Enter that saved the reading must not press anything here. */}
        <h2 tabIndex={-1} data-first>
          {stop.leaveFirst ? 'Everybody out first' : stop.what}
        </h2>
      </div>
      {stop.leaveFirst ? <p className="run-stop-what">{stop.what}</p> : null}
      <ol className="run-stop-steps">
        {stop.makeSafe.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      {stop.leaveFirst ? (
        <p className="run-stop-number">
          {company?.emergencyNumber == null ? (
            'No emergency number is on file: call the gas emergency service of this place, from outside.'
          ) : (
            <>
              Call from outside: <b>{company.emergencyNumber}</b>
            </>
          )}
        </p>
      ) : null}
      {stop.asks.length > 0 ? <p>{stop.asks.join(' ')} Until that is known, it counts as typed.</p> : null}
      <p className="lo-faint">
        {stop.why} · The maker’s manual, local code and the licensed person decide beyond this.
      </p>
      <div className="run-box-row">
        <button type="button" className="run-stop" onClick={onMakeSafe}>
          Make safe: record it now <kbd className="run-stop-key">F8</kbd>
        </button>
        <button type="button" className="run-button" onClick={lookAgain}>
          Look at it again <KeyHint keys="Esc" />
        </button>
      </div>
    </Dialog>
  );
}
