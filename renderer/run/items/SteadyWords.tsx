/** Whether the samples of a firing point are proven, and if not what is still missing: one line, said once for all of them. */
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import { ProofMark } from '../../kit/VerdictMark.tsx';
import { notProvenBecause } from '../side/notProvenBecause.ts';
import { liveReadings } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';
import { steadyRuleWords } from '../words/steadyRuleWords.ts';
import { newestOfEach } from './newestOfEach.ts';

export function SteadyWords({ item }: { readonly item: ItemOf<'series'> }) {
  const { view, analysis } = useRun();
  const readings = liveReadings(view.record, item.key).filter((one) => one.valueOwn !== null);
  const newest = newestOfEach(readings);
  const findings = analysis.findings.filter((finding) => finding.readingId !== null && newest.has(finding.readingId));
  const because = notProvenBecause(findings);
  return (
    <p className="run-steady" role="status">
      {findings.length === 0 ? null : (
        <ProofMark proof={because.length === 0 ? { proven: true } : { proven: false, because }} />
      )}
      <span className="lo-faint">{steadyRuleWords(view.sheet.steady)}</span>
    </p>
  );
}
