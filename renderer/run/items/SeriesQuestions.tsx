/** What the judgement asks about the samples of a firing point, once for all of them; Alt and a digit takes one, from any box. */
import { type RefObject, useEffect, useRef } from 'react';
import type { Suggestion } from '../../../domain/judgement/finding.ts';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import { Suggestions } from '../field/Suggestions.tsx';
import { isAltKey } from '../focus/isAltKey.ts';
import { FindingLine } from '../side/FindingLine.tsx';
import { findingsOfItem } from '../stage/findingsOfItem.ts';
import { useRun } from '../state/RunContext.ts';
import { mayTake } from '../words/suggestionWords.ts';

const DIGITS = ['1', '2', '3', '4'];

export function SeriesQuestions({
  item,
  keys,
}: {
  readonly item: ItemOf<'series'>;
  /** Hears the keys of the whole table. */
  readonly keys: RefObject<HTMLElement | null>;
}) {
  const { view, analysis, write } = useRun();
  const findings = findingsOfItem(item, view.record, analysis.findings).filter(
    (finding) => finding.suggestions.length > 0 || finding.subject.startsWith('mistake:'),
  );
  const take = (suggestion: Suggestion) => {
    const readingId = findings.find((finding) => finding.suggestions.includes(suggestion))?.readingId;
    if (readingId == null) return;
    void write('visits.takeSuggestion', {
      visitId: view.visitId,
      runId: view.runId,
      readingId,
      code: suggestion.code,
    });
  };
  const takeable = findings.flatMap((finding) => finding.suggestions).filter(mayTake);
  const latest = useRef({ takeable, take });
  useEffect(() => {
    latest.current = { takeable, take };
  });
  useEffect(() => {
    const table = keys.current;
    const listen = (event: KeyboardEvent) => {
      const suggestion = latest.current.takeable[DIGITS.findIndex((digit) => isAltKey(event, digit))];
      if (suggestion === undefined || event.defaultPrevented) return;
      event.preventDefault();
      latest.current.take(suggestion);
    };
    table?.addEventListener('keydown', listen);
    return () => table?.removeEventListener('keydown', listen);
  }, [keys]);
  if (findings.length === 0) return null;
  return (
    <div role="status">
      <ul className="run-findings">
        {findings.map((finding) => (
          <FindingLine key={`${finding.subject} ${finding.readingId}`} finding={finding} showsProof={false} />
        ))}
      </ul>
      <Suggestions findings={findings} onTake={take} />
    </div>
  );
}
