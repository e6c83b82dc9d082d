/** An item that is not being worked on: what it asks, what was answered, and what is still wrong with it. One press opens it. */
import type { StepItem } from '../../../domain/procedure/modelSheet.ts';
import type { ItemProgress } from '../../../domain/procedure/progressTypes.ts';
import { VerdictMark } from '../../kit/VerdictMark.tsx';
import { useRun } from '../state/RunContext.ts';
import { reasonWords } from '../words/reasonWords.ts';
import { shownVerdict } from '../words/shownVerdict.ts';
import { answerText } from './answerText.ts';
import { findingsOfItem } from './findingsOfItem.ts';
import { ItemMark } from './ItemMark.tsx';

export function ItemLine({
  item,
  progress,
  mayOpen,
}: {
  readonly item: StepItem;
  readonly progress: ItemProgress;
  readonly mayOpen: boolean;
}) {
  const { view, analysis, words, unitSystem, goTo } = useRun();
  const answer = answerText(item, view, unitSystem);
  const verdict = shownVerdict(findingsOfItem(item, view.record, analysis.findings));
  const why =
    progress.state === 'answered' || progress.state === 'not-possible'
      ? ''
      : progress.because
          .filter((reason) => reason.code !== 'not-answered' && reason.code !== 'finding')
          .map((reason) => reasonWords(reason, words))
          .join('; ');
  const content = (
    <>
      <ItemMark state={progress.state} />
      <span className="run-line-label">{item.label}</span>
      {answer === null ? null : <span className="run-line-answer">{answer}</span>}
      {verdict === undefined || verdict === 'no-limit-on-sheet' ? null : <VerdictMark verdict={verdict} />}
      {why === '' ? null : <span className="run-line-why">{why}</span>}
    </>
  );
  if (!mayOpen) return <div className="run-line">{content}</div>;
  return (
    <button
      type="button"
      className="run-line"
      data-state={progress.state}
      onClick={() => goTo({ stepKey: progress.stepKey, itemKey: progress.itemKey })}
    >
      {content}
    </button>
  );
}
