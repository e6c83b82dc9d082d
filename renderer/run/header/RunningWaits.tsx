/** Waits that run while other things are done: what for and how long still, one press from where they belong. */
import { formatSeconds } from '../clock/formatSeconds.ts';
import { useRun } from '../state/RunContext.ts';
import { itemLabel } from '../words/reasonWords.ts';

export function RunningWaits() {
  const { analysis, words, goTo } = useRun();
  const running = analysis.progress.steps
    .flatMap((step) => step.items)
    .filter((item) => item.timer !== null && item.timer.kind !== 'settle' && item.timer.secondsLeft > 0);
  if (running.length === 0) return null;
  return (
    <ul className="run-waits" aria-label="Running waits">
      {running.map((item) => (
        <li key={item.itemKey}>
          <button
            type="button"
            className="run-wait"
            onClick={() => goTo({ stepKey: item.stepKey, itemKey: item.itemKey })}
          >
            <b>{formatSeconds(item.timer?.secondsLeft ?? 0)}</b> {itemLabel(item.itemKey, words)}
          </button>
        </li>
      ))}
    </ul>
  );
}
