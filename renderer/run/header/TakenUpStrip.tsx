/** A run that was left and taken up again: what has grown too old meanwhile is asked once more, and says why. */
import { instantWords } from '../../kit/dayWords.ts';
import { useRun } from '../state/RunContext.ts';
import { itemLabel } from '../words/reasonWords.ts';

export function TakenUpStrip() {
  const { view, analysis, words, goTo, isSealed } = useRun();
  if (view.reopenedAt === null || isSealed) return null;
  const lapsed = analysis.progress.steps
    .flatMap((step) => step.items)
    .filter((item) => item.because.some((reason) => reason.code === 'lapsed'));
  const [first] = lapsed;
  if (first === undefined) return null;
  return (
    <div className="run-strip" data-tone="ember" role="status">
      <span>
        <strong>Taken up again {instantWords(view.reopenedAt, view.record.site.timeZone)}.</strong> Asked once more:{' '}
        {lapsed
          .map((item) => itemLabel(item.itemKey, words))
          .slice(0, 3)
          .join('; ')}
        {lapsed.length > 3 ? ` and ${lapsed.length - 3} more` : ''}.
      </span>
      <button
        type="button"
        className="run-button"
        onClick={() => goTo({ stepKey: first.stepKey, itemKey: first.itemKey })}
      >
        Go to the first
      </button>
    </div>
  );
}
