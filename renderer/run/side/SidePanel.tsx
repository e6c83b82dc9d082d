/** Beside the step: what the judgement says of it, what was worked out, and where the readings sit in the sheet's bands. */
import { useState } from 'react';
import type { Finding } from '../../../domain/judgement/finding.ts';
import { VerdictMark } from '../../kit/VerdictMark.tsx';
import { useRun } from '../state/RunContext.ts';
import { shownVerdict } from '../words/shownVerdict.ts';
import { ComputedValues } from './ComputedValues.tsx';
import { EarlierVisits } from './EarlierVisits.tsx';
import { FindingsOfStep } from './FindingsOfStep.tsx';
import { FiringPointChart } from './FiringPointChart.tsx';
import { ModulationLine } from './ModulationLine.tsx';
import { stepFindings } from './stepFindings.ts';

export function SidePanel() {
  const { view, analysis, active } = useRun();
  const [isOpen, setIsOpen] = useState(false);
  const step = analysis.steps.find((one) => one.key === active?.stepKey);
  if (step === undefined) return null;
  const findings = stepFindings(step, view.record, analysis.findings);
  const isCombustion = step.items.some((item) => item.kind === 'series');
  return (
    <aside
      ref={takeKeyboard}
      className="run-side"
      data-empty={findings.length === 0}
      data-open={isOpen}
      aria-label="Findings and computed values"
    >
      {/* In a small window only this line is shown until it is pressed. */}
      <button
        type="button"
        className="run-side-line"
        aria-expanded={isOpen}
        onClick={() => setIsOpen((before) => !before)}
      >
        <SummaryLine findings={findings} />
      </button>
      <div className="run-side-content">
        <FindingsOfStep findings={findings} />
        <EarlierVisits step={step} />
        {isCombustion ? <FiringPointChart /> : null}
        {isCombustion || step.items.some((item) => item.kind === 'tuning') ? <ModulationLine /> : null}
        <ComputedValues findings={findings} />
      </div>
    </aside>
  );
}

/** It scrolls on its own: without a tab stop the keyboard could not. */
function takeKeyboard(region: HTMLElement | null): void {
  if (region !== null) region.tabIndex = 0;
}

function SummaryLine({ findings }: { readonly findings: readonly Finding[] }) {
  const heaviest = shownVerdict(findings);
  const count = findings.filter((finding) => finding.verdict === heaviest).length;
  const computed = findings.filter((finding) => finding.basis.result !== undefined).length;
  const notProven = findings.filter((finding) => !finding.proof.proven).length;
  return (
    <>
      <b>Findings</b>
      {heaviest === undefined ? null : (
        <>
          {count} × <VerdictMark verdict={heaviest} />
        </>
      )}
      {notProven === 0 ? null : <span>{notProven} not proven</span>}
      {computed === 0 ? null : <span>{computed} worked out</span>}
    </>
  );
}
