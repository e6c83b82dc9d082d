/** The burner's own calibration, stage by stage as the sheet has them. Load lost or casing opened: it is started again. */
import { useEffect, useRef, useState } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemProgress } from '../../../domain/procedure/progressTypes.ts';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { CountDown } from '../clock/CountDown.tsx';
import { timeOfDay } from '../clock/timeOfDay.ts';
import { plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { useRun } from '../state/RunContext.ts';
import { useItemWrites } from '../state/useItemWrites.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import { ReasonBox } from './ReasonBox.tsx';
import { TuningReadings } from './TuningReadings.tsx';

const READY_WORDS = ['Heat load lost', 'Casing opened', 'Lockout', 'Power lost'];

export function TuningItem({ item, progress }: { readonly item: ItemOf<'tuning'>; readonly progress: ItemProgress }) {
  const { view, write, saveAndGoOn } = useRun();
  const here = { stepKey: progress.stepKey, itemKey: item.key };
  const { ref, state, send } = useItemWrites(here);
  const [isInterrupting, setInterrupting] = useState(false);
  const { timeZone } = view.record.site;
  const tuning = view.record.tunings.findLast((one) => one.itemKey === item.key);
  const isRunning = tuning !== undefined && tuning.finishedAt === null && tuning.interruptedAt === null;
  const next = isRunning ? item.stages.find((stage) => !reachedAt(stage.key)) : undefined;

  function reachedAt(stageKey: string): string | null {
    return tuning?.stages.find((one) => one.stageKey === stageKey)?.reachedAt ?? null;
  }
  const demands = [
    item.needsCasingClosed ? 'casing closed' : '',
    item.needsHeatLoadOpen ? 'heat load open' : '',
    item.postRunWaitS > 0 ? 'a wait afterwards' : '',
  ].filter((one) => one !== '');

  const keys = useKeys<HTMLDivElement>((event) => {
    if (!isRunning || plainKey(event) !== 'i') return;
    event.preventDefault();
    setInterrupting(true);
  });
  return (
    <div ref={keys} className="run-note">
      {demands.length === 0 ? null : <p className="run-card-hint">Needs: {demands.join(', ')}.</p>}
      {(item.stageReadings ?? []).length > 0 && tuning !== undefined && tuning.interruptedAt === null ? (
        <TuningReadings item={item} here={here} reachedAt={reachedAt} />
      ) : null}
      <ol className="run-stages">
        {item.stages.map((stage) => {
          const at = isRunning || tuning?.finishedAt ? reachedAt(stage.key) : null;
          const stageState = at !== null ? 'reached' : stage.key === next?.key ? 'next' : 'later';
          return (
            <li key={stage.key} className="run-tuning-stage" data-state={stageState}>
              <b>{stage.label}</b>
              <span>{at === null ? (stageState === 'next' ? 'next' : '') : timeOfDay(at, timeZone, true)}</span>
            </li>
          );
        })}
      </ol>
      {tuning?.finishedAt != null && item.postRunWaitS > 0 ? (
        <CountDown
          startedAt={tuning.finishedAt}
          totalS={item.postRunWaitS}
          overWords="wait after the run is over"
          leftWords="wait after the run"
        />
      ) : null}
      {tuning?.interruptedAt != null ? (
        <p className="run-card-why">
          Interrupted {timeOfDay(tuning.interruptedAt, timeZone)}: {tuning.interruptedReason ?? ''}. Start it again.
        </p>
      ) : null}
      <div className="run-box-row">
        {tuning?.finishedAt != null ? (
          <MainButton key="on" onPress={() => void saveAndGoOn(here, async () => true)}>
            Go on
          </MainButton>
        ) : !isRunning ? (
          <MainButton key="start" onPress={() => void send('visits.startTuning', ref)}>
            {tuning === undefined ? 'Tuning run started' : 'Started again'}
          </MainButton>
        ) : next !== undefined ? (
          <MainButton
            key={next.key}
            onPress={() => void send('visits.reachTuningStage', { ...ref, stageKey: next.key })}
          >
            {next.label} reached
          </MainButton>
        ) : (
          <MainButton key="finish" onPress={() => void send('visits.finishTuning', ref)}>
            The display says finished
          </MainButton>
        )}
        {isRunning ? (
          <button type="button" className="run-button" onClick={() => setInterrupting(true)}>
            Interrupted <KeyHint keys="I" />
          </button>
        ) : null}
        <FieldSaved state={state} />
      </div>
      {isInterrupting && isRunning ? (
        <ReasonBox
          address={here}
          box="interrupted"
          label="Interrupted, because"
          stored=""
          readyWords={READY_WORDS}
          isFocused
          onCancel={() => setInterrupting(false)}
          save={async (reason) => {
            const reply = await write('visits.interruptTuning', { ...ref, reason: reason.trim() });
            if (reply.ok) setInterrupting(false);
            return reply.ok ? { ok: true } : { ok: false, why: saveErrorWords(reply.error) };
          }}
        />
      ) : null}
    </div>
  );
}

/** Takes the keyboard each time the run moves on, so that one key after the other is enough. */
function MainButton({ onPress, children }: { readonly onPress: () => void; readonly children: React.ReactNode }) {
  const button = useRef<HTMLButtonElement>(null);
  // Only when it appears: the run is painted every second, and the keyboard may be in the reason by then.
  useEffect(() => button.current?.focus({ preventScroll: true }), []);
  return (
    <button ref={button} type="button" className="run-button run-button-main" data-main onClick={onPress}>
      {children} <KeyHint keys="Enter" />
    </button>
  );
}
