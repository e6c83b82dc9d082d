/** Whether the samples of a firing point are proven, and if not what is still missing: one line, said once for all of them. */
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import { ProofMark } from '../../kit/VerdictMark.tsx';
import { notProvenBecause } from '../side/notProvenBecause.ts';
import { liveReadings } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';

export function SteadyWords({ item }: { readonly item: ItemOf<'series'> }) {
  const { view, analysis } = useRun();
  const { steady } = view.sheet;
  const readings = liveReadings(view.record, item.key).filter((one) => one.valueOwn !== null);
  const last = Math.max(0, ...readings.map((one) => one.sample));
  const newest = new Set(readings.filter((one) => one.sample === last).map((one) => one.readingId));
  const findings = analysis.findings.filter((finding) => finding.readingId !== null && newest.has(finding.readingId));
  const because = notProvenBecause(findings);
  return (
    <p className="run-steady" role="status">
      {findings.length === 0 ? null : (
        <ProofMark proof={because.length === 0 ? { proven: true } : { proven: false, because }} />
      )}{' '}
      <span className="lo-faint">
        {steady.minSamples} samples, {steady.apartS} s apart, within {steady.o2Points} % O₂, {steady.coPpm} ppm or{' '}
        {steady.coPct} % CO, {steady.flueK} K flue
      </span>
    </p>
  );
}
