/** The judgement of a text while it is typed: as if it were saved, with everything that is computed from it. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import { judgeReading } from '../../../domain/judgement/judgeReading.ts';
import { heaviestVerdict, verdictRank } from '../../../domain/judgement/verdictRank.ts';
import type { RecordedReading } from '../../../domain/procedure/runRecord.ts';
import type { TypedValue } from '../../../domain/quantity/parseTyped.ts';
import type { PastRun } from '../../../domain/trend/pastRun.ts';
import type { RunView } from '../../../electron/contract/runs.ts';

/** Not yet stored: it has no id of its own. */
export const TYPED_READING_ID = 'as-typed';

export function liveFindings(
  view: Pick<RunView, 'record' | 'sheet' | 'reopenedAt'>,
  past: readonly PastRun[],
  box: Omit<RecordedReading, 'readingId' | 'typedText' | 'typedUnit' | 'valueOwn' | 'comparator' | 'supersededById'>,
  typed: TypedValue,
): readonly Finding[] {
  const reading: RecordedReading = {
    ...box,
    readingId: TYPED_READING_ID,
    typedText: typed.typedText,
    typedUnit: typed.unit,
    valueOwn: typed.valueOwn,
    comparator: typed.comparator,
    supersededById: null,
  };
  // The one in the same box is what this text would replace.
  const others = view.record.readings.filter(
    (one) =>
      one.supersededById !== null ||
      one.itemKey !== box.itemKey ||
      one.quantity !== box.quantity ||
      one.sample !== box.sample,
  );
  return heaviestFirst(
    judgeReading({
      record: { ...view.record, readings: others },
      sheet: view.sheet,
      reopenedAt: view.reopenedAt,
      past,
      reading,
    }),
  );
}

export function heaviestFirst(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort((one, other) => verdictRank(other.verdict) - verdictRank(one.verdict));
}

/** Whether Enter should wait for a second one: the judgement asks something, or the value is beyond a limit. */
export function asksSomething(findings: readonly Finding[]): boolean {
  const heaviest = heaviestVerdict(findings);
  return (
    heaviest === 'outside' ||
    heaviest === 'stop' ||
    findings.some((finding) => finding.suggestions.length > 0 || finding.subject.startsWith('mistake:'))
  );
}
