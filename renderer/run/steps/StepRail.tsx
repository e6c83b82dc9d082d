/** All steps in order, each with its state as word and shape; a locked one says why as soon as it has the focus. */
import { useEffect, useRef } from 'react';
import type { StepProgress } from '../../../domain/procedure/progressTypes.ts';
import { useRun } from '../state/RunContext.ts';
import { lockWords, stepTitle } from '../words/reasonWords.ts';
import { StepMark, stepStateWords } from './StepMark.tsx';

export function StepRail({ isLeaving }: { readonly isLeaving: boolean }) {
  const { analysis, active, goToLeaving } = useRun();
  const { steps, gates } = analysis.progress;
  const openCount = gates.leaving.length;
  return (
    <nav className="run-rail" aria-label="Steps">
      <ol className="run-steps">
        {steps.map((step, index) => (
          <StepLine
            key={step.stepKey}
            step={step}
            number={index + 1}
            isCurrent={!isLeaving && step.stepKey === active?.stepKey}
          />
        ))}
      </ol>
      <button
        type="button"
        className="run-step run-step-leaving"
        aria-current={isLeaving ? 'step' : undefined}
        onClick={goToLeaving}
      >
        <span className="run-step-title">Before leaving</span>
        <span className="run-step-state">
          {openCount === 0 ? 'nothing open' : `${openCount} open`} <kbd className="lo-key">Alt L</kbd>
        </span>
      </button>
    </nav>
  );
}

function StepLine({
  step,
  number,
  isCurrent,
}: {
  readonly step: StepProgress;
  readonly number: number;
  readonly isCurrent: boolean;
}) {
  const { words, goToStep } = useRun();
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (isCurrent) button.current?.scrollIntoView({ block: 'nearest' });
  }, [isCurrent]);
  const left = step.items.filter((item) => item.state !== 'answered' && item.state !== 'not-possible').length;
  return (
    <li>
      <button
        ref={button}
        type="button"
        className="run-step"
        data-state={step.state}
        aria-current={isCurrent ? 'step' : undefined}
        onClick={() => goToStep(step.stepKey)}
      >
        <StepMark state={step.state} />
        <span className="run-step-title">
          {number}. {stepTitle(step.stepKey, words)}
        </span>
        <span className="run-step-state">
          {/* A step all of whose items are kept to something that is not so here. */}
          {step.items.length === 0 ? 'not asked here' : stepStateWords(step.state)}
          {step.state === 'open' && left < step.items.length ? `, ${left} left` : ''}
        </span>
        {step.state === 'locked' ? (
          <span className="run-step-why">{step.lockedBecause.map((lock) => lockWords(lock, words)).join(' ')}</span>
        ) : null}
      </button>
    </li>
  );
}
