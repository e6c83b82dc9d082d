/**
 * What a number that is put right after sealing would do to the judgement. A stop or an outside that it would make better stays:
 * the way out of a bad finding is a new reading, not a new number. What it makes worse is told at once.
 */
import type { RunRecord } from '../procedure/runRecord.ts';
import type { Finding } from './finding.ts';
import type { JudgeInput } from './judgeInput.ts';
import { judgeRun } from './judgeRun.ts';
import { weightBySubject } from './markNewReadings.ts';

export type AmendedNumber = {
  readonly readingId: string;
  readonly valueOwn: number;
  readonly comparator: '=' | '>' | '<';
};

export type AmendmentJudged = {
  /** A stop or an outside would weigh less, or be gone. */
  readonly improves: boolean;
  /** Outside or at a stop, heavier than before or new. */
  readonly worse: readonly Finding[];
};

/** `earlier`: amended before this one, oldest first. */
export function judgeAmendment(
  input: JudgeInput,
  earlier: readonly AmendedNumber[],
  amended: AmendedNumber,
): AmendmentJudged {
  const withEarlier = earlier.reduce(withNumber, input.record);
  const before = weightBySubject(judgeRun({ ...input, record: withEarlier }));
  const judged = judgeRun({ ...input, record: withNumber(withEarlier, amended) });
  const after = weightBySubject(judged);
  return {
    improves: [...before].some(([subject, weight]) => (after.get(subject) ?? 0) < weight),
    worse: judged.filter(
      ({ subject, verdict }) =>
        (verdict === 'outside' || verdict === 'stop') && (after.get(subject) ?? 0) > (before.get(subject) ?? 0),
    ),
  };
}

function withNumber(record: RunRecord, { readingId, valueOwn, comparator }: AmendedNumber): RunRecord {
  const readings = record.readings.map((one) =>
    one.readingId === readingId ? { ...one, valueOwn, comparator, notMeasuredReason: null } : one,
  );
  return { ...record, readings };
}
