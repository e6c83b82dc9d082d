/** Which findings belong to a step: those of its readings, of what was computed from them, of its items and of its firing point. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import type { SheetStep } from '../../../domain/procedure/modelSheet.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';

export function stepFindings(
  step: SheetStep,
  record: Pick<RunRecord, 'readings'>,
  findings: readonly Finding[],
): readonly Finding[] {
  const readings = new Set(
    record.readings
      .filter((one) => one.stepKey === step.key && one.supersededById === null)
      .map((one) => one.readingId),
  );
  const items = new Set(step.items.map((item) => item.key));
  return findings.filter((finding) => {
    if (finding.readingId !== null) return readings.has(finding.readingId);
    if (items.has(finding.subject)) return true;
    const points = step.items.flatMap((item) => (item.kind === 'series' ? [item.firingPoint] : []));
    if (finding.subject === `computed:smallest-zone@${points[0]}`) return true;
    return Object.values(finding.basis.inputs).some((input) => typeof input === 'string' && readings.has(input));
  });
}
