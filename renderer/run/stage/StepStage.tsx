/** The step that is worked on: its caution, its items in order with one of them open, or why it is locked. */
import type { SheetStep } from '../../../domain/procedure/modelSheet.ts';
import type { StepProgress } from '../../../domain/procedure/progressTypes.ts';
import { Caution } from '../../kit/Caution.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useRun } from '../state/RunContext.ts';
import { ItemCard } from './ItemCard.tsx';
import { ItemLine } from './ItemLine.tsx';
import { LockedStep } from './LockedStep.tsx';
import { StopOfStep } from './StopOfStep.tsx';

export function StepStage({ stepKey }: { readonly stepKey: string }) {
  const { analysis, active, isSealed } = useRun();
  const step = analysis.steps.find((one) => one.key === stepKey);
  const progress = analysis.progress.steps.find((one) => one.stepKey === stepKey);
  if (step === undefined || progress === undefined) return null;
  const isLocked = progress.state === 'locked' || (progress.state === 'done' && progress.lockedBecause.length > 0);
  return (
    <section className="run-stage" aria-labelledby="run-stage-title">
      <div className="run-stage-head">
        <h2 id="run-stage-title">{step.title}</h2>
        <span className="run-stage-who">{WHO[step.who]}</span>
      </div>
      {step.caution === undefined ? null : (
        <div className="run-caution">
          <Caution>{step.caution}</Caution>
        </div>
      )}
      {isLocked ? (
        <>
          <StopOfStep stepKey={step.key} />
          <LockedStep stepKey={step.key} locks={progress.lockedBecause} />
        </>
      ) : null}
      <ol className="run-items">
        {progress.items.map((item) => {
          const asked = step.items.find((one) => one.key === item.itemKey);
          if (asked === undefined) return null;
          const isOpen = !isLocked && !isSealed && active?.itemKey === item.itemKey;
          return (
            <li key={item.itemKey}>
              {isOpen ? (
                <ItemCard key={item.itemKey} item={asked} progress={item} />
              ) : (
                <ItemLine item={asked} progress={item} mayOpen={!isLocked && !isSealed} />
              )}
            </li>
          );
        })}
      </ol>
      <StepEnd step={step} progress={progress} />
    </section>
  );
}

const WHO: Record<SheetStep['who'], string> = {
  anyone: 'anyone of the crew',
  licensed: 'licensed person only',
  dispatcher: 'office',
};

/** What comes after, so that the way on is on screen when the last item is answered. */
function StepEnd({ step, progress }: { readonly step: SheetStep; readonly progress: StepProgress }) {
  const { analysis, goToStep, goToLeaving } = useRun();
  const position = analysis.steps.findIndex((one) => one.key === step.key);
  const next = analysis.steps[position + 1];
  return (
    <div className="run-stage-end">
      <span className="lo-faint">
        <KeyHint keys="Alt+↑" /> <KeyHint keys="Alt+↓" /> one item back or on
      </span>
      {progress.state === 'done' ? <span className="run-done-words">Step done.</span> : null}
      {next === undefined ? (
        <button type="button" className="run-button" onClick={goToLeaving}>
          Before leaving
        </button>
      ) : (
        <button type="button" className="run-button" onClick={() => goToStep(next.key)}>
          Next step: {next.title}
        </button>
      )}
    </div>
  );
}
