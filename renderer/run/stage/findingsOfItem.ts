/** What the judgement says of an item: of its readings, of what was computed from them, and of the item itself. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import type { StepItem } from '../../../domain/procedure/modelSheet.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';

export function findingsOfItem(
  item: StepItem,
  record: Pick<RunRecord, 'readings'>,
  findings: readonly Finding[],
): readonly Finding[] {
  const ids = new Set(
    record.readings
      .filter((reading) => reading.itemKey === item.key && reading.supersededById === null)
      .map((reading) => reading.readingId),
  );
  return findings.filter((finding) =>
    finding.readingId === null ? finding.subject === item.key : ids.has(finding.readingId),
  );
}
