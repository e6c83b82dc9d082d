/** Beside a number: what the sheet wants and where that stands, what the judgement says and why, and what it asks. */
import type { Finding, Suggestion } from '../../../domain/judgement/finding.ts';
import type { SheetLimit } from '../../../domain/procedure/modelSheet.ts';
import type { EntryUnit } from '../../../domain/quantity/entryUnits.ts';
import type { TypedProblem } from '../../../domain/quantity/parseTyped.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { ProofMark } from '../../kit/VerdictMark.tsx';
import { FindingLine } from '../side/FindingLine.tsx';
import { notProvenBecause } from '../side/notProvenBecause.ts';
import { useRun } from '../state/RunContext.ts';
import { sourceWords } from '../words/findingWords.ts';
import { limitWords, stopWords } from '../words/limitWords.ts';
import { problemWords } from '../words/problemWords.ts';
import { waitsForMore } from '../words/shownVerdict.ts';
import { meaningsOf } from './meaningsOf.ts';
import { meaningText, type PickedMeaning } from './meaningText.ts';
import { Suggestions } from './Suggestions.tsx';

export function ReadingDetail({
  quantity,
  limits,
  unit,
  findings,
  problem,
  isRefused,
  onMeaning,
  onSuggestion,
}: {
  readonly quantity: QuantityKey;
  readonly limits: readonly SheetLimit[];
  readonly unit: EntryUnit;
  readonly findings: readonly Finding[];
  readonly problem: TypedProblem | null;
  /** The box says so already. */
  readonly isRefused: boolean;
  readonly onMeaning: (meaning: PickedMeaning) => void;
  /** null: they are asked somewhere else. */
  readonly onSuggestion: ((suggestion: Suggestion) => void) | null;
}) {
  const { view } = useRun();
  const { sheet } = view;
  const worthSaying = findings.filter(
    (finding) =>
      finding.verdict !== 'no-limit-on-sheet' &&
      !waitsForMore(finding) &&
      (finding.verdict !== 'within' || finding.basis.result !== undefined) &&
      // The sheet's own limits stand above already, the verdict beside the box.
      !(finding.readingId !== null && finding.subject.startsWith('limit:')),
  );
  const because = notProvenBecause(findings);
  const meanings = meaningsOf(problem);
  return (
    <>
      <p className="run-limit">
        {limits.length === 0 ? (
          <>No limit on the sheet (rev. {sheet.revision}).</>
        ) : (
          limits.map((limit) => (
            <span key={`${limit.severity} ${limit.min} ${limit.max}`} className="run-limit-line">
              {limit.severity === 'stop' ? 'Stop ' : 'Sheet wants '}
              <b>{limit.severity === 'stop' ? stopWords(quantity, limit, unit) : limitWords(quantity, limit, unit)}</b>{' '}
              <span className="lo-faint">
                {sourceWords(limit.basis)} (rev. {sheet.revision})
              </span>
            </span>
          ))
        )}
      </p>
      {problem === null || problem.code === 'empty' || isRefused ? null : (
        <p className="run-problem" role="status">
          {problemWords(problem)}
        </p>
      )}
      {meanings.length > 0 ? (
        <div className="run-ready-words">
          {meanings.map((meaning, index) => (
            <button
              key={`${meaning.valueTyped} ${meaning.unit}`}
              type="button"
              className="run-button"
              onClick={() => onMeaning(meaning)}
            >
              <KeyHint keys={`Alt+${index + 1}`} /> {meaningText(meaning)}
            </button>
          ))}
        </div>
      ) : null}
      {worthSaying.length === 0 ? null : (
        <ul className="run-findings" aria-live="polite">
          {worthSaying.map((finding) => (
            <FindingLine
              key={`${finding.subject} ${finding.readingId} ${JSON.stringify(finding.basis)}`}
              finding={finding}
              showsProof={false}
            />
          ))}
        </ul>
      )}
      {because.length === 0 ? null : <ProofMark proof={{ proven: false, because }} />}
      {onSuggestion === null ? null : <Suggestions findings={findings} onTake={onSuggestion} />}
    </>
  );
}
