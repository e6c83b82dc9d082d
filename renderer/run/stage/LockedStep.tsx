/** Why a step may not be begun, each reason with the way to what is still open. */
import type { ProgressBlocker, StepLock } from '../../../domain/procedure/progressTypes.ts';
import { Note } from '../../kit/Note.tsx';
import { useRun } from '../state/RunContext.ts';
import { blockWords, itemLabel, stepTitle } from '../words/reasonWords.ts';
import { BlockerList } from './BlockerList.tsx';
import { BlockersByStep } from './BlockersByStep.tsx';

export function LockedStep({ stepKey, locks }: { readonly stepKey: string; readonly locks: readonly StepLock[] }) {
  const { words } = useRun();
  return (
    <div className="run-locked">
      {locks.map((lock) =>
        lock.code === 'step-first' ? (
          <Note key={lock.stepKey} tone="caution" title={`Locked: first finish “${stepTitle(lock.stepKey, words)}”`}>
            <BlockerList blockers={lock.itemKeys.map((itemKey) => toBlocker(lock.stepKey, itemKey))} isShort />
          </Note>
        ) : (
          <Note
            key={lock.block}
            tone="caution"
            title={`Locked: hold point before ${blockWords(lock.block)}, ${lock.blockers.length} open`}
          >
            <BlockersByStep blockers={lock.blockers} hereStepKey={stepKey} />
          </Note>
        ),
      )}
    </div>
  );

  function toBlocker(firstKey: string, itemKey: string): ProgressBlocker & { readonly label: string } {
    return { stepKey: firstKey, itemKey, because: [], label: itemLabel(itemKey, words) };
  }
}
