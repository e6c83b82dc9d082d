/**
 * A suggestion that would turn a stop or an outside into something better may not be taken over at a key press: the way
 * out of a bad finding is a new reading, not a new number. Found by trying each suggestion and judging again.
 */
import type { Finding, Suggestion } from './finding.ts';
import type { JudgeInput } from './judgeInput.ts';
import { verdictRank } from './verdictRank.ts';

export function markNewReadings(
  findings: readonly Finding[],
  judged: readonly Finding[],
  input: JudgeInput,
  judgeAgain: (input: JudgeInput) => readonly Finding[],
): readonly Finding[] {
  const before = weightBySubject(judged);
  const mark = (suggestion: Suggestion): Suggestion => {
    if (suggestion.needsNewReading || suggestion.changes.length === 0) return suggestion;
    const after = weightBySubject(judgeAgain(withChanges(input, suggestion)));
    const isBetter = [...before].some(([subject, weight]) => (after.get(subject) ?? 0) < weight);
    return { ...suggestion, needsNewReading: isBetter };
  };
  return findings.map((finding) =>
    finding.suggestions.length === 0 ? finding : { ...finding, suggestions: finding.suggestions.map(mark) },
  );
}

/** How heavily a subject stands outside or at stop, all its samples together. */
export function weightBySubject(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const weights = new Map<string, number>();
  for (const { subject, verdict } of findings) {
    if (verdict !== 'outside' && verdict !== 'stop') continue;
    weights.set(subject, (weights.get(subject) ?? 0) + verdictRank(verdict));
  }
  return weights;
}

function withChanges(input: JudgeInput, { changes }: Suggestion): JudgeInput {
  const toOwn = new Map(changes.map((one) => [one.readingId, one.toOwn]));
  const readings = input.record.readings.map((reading) => {
    const valueOwn = toOwn.get(reading.readingId);
    return valueOwn === undefined ? reading : { ...reading, valueOwn };
  });
  return { ...input, record: { ...input.record, readings } };
}
