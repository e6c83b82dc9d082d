/** What was worked out from the readings of this step: excess air, CO air-free, efficiency, clocked input and the like. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import { VerdictMark } from '../../kit/VerdictMark.tsx';
import { useRun } from '../state/RunContext.ts';
import { figures } from '../words/figures.ts';
import { subjectWords } from '../words/findingWords.ts';

export function ComputedValues({ findings }: { readonly findings: readonly Finding[] }) {
  const { view } = useRun();
  const computed = eachOnce(findings.filter((finding) => finding.basis.result !== undefined));
  if (computed.length === 0) return null;
  return (
    <section className="run-side-part" aria-label="Computed values">
      <h2>Worked out</h2>
      <ul className="run-computed">
        {computed.map((finding) => (
          <li key={finding.subject}>
            <span className="run-computed-line">
              <span>{subjectWords(finding, view.sheet)}</span>
              <b>{resultText(finding)}</b>
            </span>
            {finding.verdict === 'no-limit-on-sheet' ? null : <VerdictMark verdict={finding.verdict} />}
            {deviationText(finding)}
            <span className="run-formula">{finding.basis.formula}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/**
 * A series gives one of each per sample: the last one read is shown. A number held against a sheet and a ceiling is still
 * one number: the heavier verdict stands beside it.
 */
function eachOnce(findings: readonly Finding[]): readonly Finding[] {
  const newest = [...new Map(findings.map((finding) => [finding.subject, finding])).values()];
  const byNumber = Map.groupBy(newest, ({ basis }) => `${basis.formula} ${basis.result?.value}`);
  return [...byNumber.values()].flatMap(
    (same) => same.find((one) => one.verdict !== 'no-limit-on-sheet') ?? same[0] ?? [],
  );
}

function resultText({ basis }: Finding): string {
  if (basis.result === undefined) return '';
  const { value, unit, plusMinus } = basis.result;
  return `${figures(value)}${plusMinus === null ? '' : ` ± ${figures(plusMinus)}`}${unit === '' ? '' : ` ${unit}`}`;
}

/** A clocked input against the rating of this site, as an interval. */
function deviationText({ basis }: Finding): string {
  const { deviationPct, lowestPct, highestPct } = basis.inputs;
  if (typeof deviationPct !== 'number' || typeof lowestPct !== 'number' || typeof highestPct !== 'number') return '';
  return ` ${signed(deviationPct)} % of the site rating (${signed(lowestPct)} to ${signed(highestPct)} %) `;
}

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${figures(value)}`;
}
