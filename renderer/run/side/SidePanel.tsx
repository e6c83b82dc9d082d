/** Beside the step: what the judgement says of it, what was worked out, and where the readings sit in the sheet's bands. */
import { useRun } from '../state/RunContext.ts';
import { ComputedValues } from './ComputedValues.tsx';
import { FindingsOfStep } from './FindingsOfStep.tsx';
import { FiringPointChart } from './FiringPointChart.tsx';
import { stepFindings } from './stepFindings.ts';

export function SidePanel() {
  const { view, analysis, active } = useRun();
  const step = analysis.steps.find((one) => one.key === active?.stepKey);
  if (step === undefined) return null;
  const findings = stepFindings(step, view.record, analysis.findings);
  const isCombustion = step.items.some((item) => item.kind === 'series');
  return (
    <aside className="run-side" data-empty={findings.length === 0} aria-label="Findings and computed values">
      <FindingsOfStep findings={findings} />
      <ComputedValues findings={findings} />
      {isCombustion ? <FiringPointChart /> : null}
    </aside>
  );
}
