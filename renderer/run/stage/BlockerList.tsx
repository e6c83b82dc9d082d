/** What stands in the way, line by line, each a jump to where it is settled. */
import type { ProgressBlocker } from '../../../domain/procedure/progressTypes.ts';
import { useRun } from '../state/RunContext.ts';
import { blockerSubject, blockerWords, stepTitle } from '../words/reasonWords.ts';

export function BlockerList({
  blockers,
  isShort = false,
  namesStep = true,
  hereStepKey = null,
}: {
  readonly blockers: readonly ProgressBlocker[];
  /** Without why: that it is open is all there is to say. */
  readonly isShort?: boolean;
  readonly namesStep?: boolean;
  /** The locked step this stands in: what is found in it leads nowhere else. */
  readonly hereStepKey?: string | null;
}) {
  const { words, goTo } = useRun();
  return (
    <ul className="run-blockers">
      {blockers.map((blocker) => {
        const { stepKey, itemKey } = blocker;
        const subject = blockerSubject(blocker, words);
        const why = isShort ? '' : blockerWords(blocker, words);
        const text = (
          <>
            <b>{subject}</b>
            {why === '' ? null : <span>{why}</span>}
          </>
        );
        return (
          <li key={`${stepKey} ${itemKey} ${why}`}>
            {stepKey !== null && itemKey !== null && stepKey !== hereStepKey ? (
              <button type="button" className="run-blocker" onClick={() => goTo({ stepKey, itemKey })}>
                {text}
                <span className="run-blocker-where">{namesStep ? stepTitle(stepKey, words) : ''} ›</span>
              </button>
            ) : (
              <div className="run-blocker">{text}</div>
            )}
          </li>
        );
      })}
    </ul>
  );
}
