/** A timed wait. Its start is stored, so it goes on through reloads, sleep and other steps; a moved clock makes it run again. */
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemProgress } from '../../../domain/procedure/progressTypes.ts';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { CountDown } from '../clock/CountDown.tsx';
import { secondsInWords } from '../clock/formatSeconds.ts';
import { timeOfDay } from '../clock/timeOfDay.ts';
import { useRun } from '../state/RunContext.ts';
import { useItemWrites } from '../state/useItemWrites.ts';
import { sourceWords } from '../words/findingWords.ts';

export function HoldItem({ item, progress }: { readonly item: ItemOf<'hold'>; readonly progress: ItemProgress }) {
  const { view, saveAndGoOn } = useRun();
  const here = { stepKey: progress.stepKey, itemKey: item.key };
  const { ref, state, send } = useItemWrites(here);
  const hold = view.record.holds.findLast((one) => one.itemKey === item.key);
  const isRunning = hold !== undefined && hold.endedAt === null && !hold.clockJumped;
  const isDone = progress.state === 'answered';
  const { timeZone } = view.record.site;

  const start = () => void send('visits.startHold', ref);
  return (
    <div className="run-note">
      <p className="run-card-hint">
        {secondsInWords(item.seconds)} · {sourceWords(item.basis)}
      </p>
      {isRunning ? (
        <CountDown
          startedAt={hold.startedAt}
          totalS={Math.max(item.seconds, hold.requiredS)}
          overWords="time is over"
          leftWords={`left, started ${timeOfDay(hold.startedAt, timeZone, true)}`}
        />
      ) : null}
      {hold?.clockJumped ? (
        <p className="run-card-why">The laptop’s clock moved meanwhile: not proven, run it again.</p>
      ) : null}
      <div className="run-box-row">
        {isDone || isRunning ? (
          <button
            type="button"
            className="run-button run-button-main"
            data-main
            onClick={() => void saveAndGoOn(here, async () => true)}
          >
            {isDone ? 'Go on' : 'Meanwhile, go on'} <KeyHint keys="Enter" />
          </button>
        ) : (
          <button type="button" className="run-button run-button-main" data-main onClick={start}>
            {hold === undefined ? 'Start the wait' : 'Start it again'} <KeyHint keys="Enter" />
          </button>
        )}
        {isDone && hold !== undefined ? (
          <button type="button" className="run-button" onClick={start}>
            Run it again
          </button>
        ) : null}
        <FieldSaved state={state} />
      </div>
    </div>
  );
}
