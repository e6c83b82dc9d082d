/** What a colleague would ask: one key to take it, or, where only a new reading will do, the words for that. */
import type { Finding, Suggestion } from '../../../domain/judgement/finding.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useRun } from '../state/RunContext.ts';
import { changeWords } from '../words/changeWords.ts';
import { mayTake, suggestionQuestion } from '../words/suggestionWords.ts';

export function Suggestions({
  findings,
  onTake,
}: {
  readonly findings: readonly Finding[];
  readonly onTake: (suggestion: Suggestion) => void;
}) {
  const { unitSystem } = useRun();
  const suggestions = findings.flatMap((finding) => finding.suggestions);
  if (suggestions.length === 0) return null;
  const takeable = suggestions.filter(mayTake);
  return (
    <ul className="run-suggestions" aria-label="Questions about what was typed">
      {suggestions.map((suggestion) => {
        const words = suggestion.changes.map((change) => changeWords(change, unitSystem)).join(', ');
        const position = takeable.indexOf(suggestion);
        return (
          <li key={`${suggestion.code} ${words}`}>
            {position >= 0 ? (
              <button type="button" className="run-button run-suggestion" onClick={() => onTake(suggestion)}>
                <KeyHint keys={`Alt+${position + 1}`} /> <b>{suggestionQuestion(suggestion.code)}</b> Yes: {words}
              </button>
            ) : (
              <p className="run-suggestion-again">
                <b>{suggestionQuestion(suggestion.code)}</b>{' '}
                {suggestion.needsNewReading ? `Measure again${words === '' ? '' : ` (it would be ${words})`}.` : ''}
              </p>
            )}
          </li>
        );
      })}
    </ul>
  );
}
