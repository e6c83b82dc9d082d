/** A long list of what is open, under the step each thing belongs to; what is about the whole appliance comes first. */
import type { ProgressBlocker } from '../../../domain/procedure/progressTypes.ts';
import { useRun } from '../state/RunContext.ts';
import { stepTitle } from '../words/reasonWords.ts';
import { BlockerList } from './BlockerList.tsx';

export function BlockersByStep({
  blockers,
  hereStepKey = null,
}: {
  readonly blockers: readonly ProgressBlocker[];
  readonly hereStepKey?: string | null;
}) {
  const { words } = useRun();
  const groups = Map.groupBy(blockers, (blocker) => blocker.stepKey);
  return (
    <div className="run-groups">
      {[...groups].map(([stepKey, ofStep]) => (
        <section key={stepKey ?? ''} className="run-group">
          <h4>
            {stepKey === null ? 'The appliance' : stepTitle(stepKey, words)}: {ofStep.length}
          </h4>
          <BlockerList blockers={ofStep} namesStep={false} hereStepKey={hereStepKey} />
        </section>
      ))}
    </div>
  );
}
