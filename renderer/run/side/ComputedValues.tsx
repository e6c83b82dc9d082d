/** What was worked out from the readings of this step: excess air, CO air-free, efficiency, clocked input and the like. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { VerdictMark } from '../../kit/VerdictMark.tsx';
import { RouteLink } from '../../RouteLink.tsx';
import { worksheetsAbout } from '../../worksheets/visit/worksheetsAbout.ts';
import { useRun } from '../state/RunContext.ts';
import { factWords } from '../words/factWords.ts';
import { figures } from '../words/figures.ts';
import { subjectWords } from '../words/findingWords.ts';
import { resultText, workedOutText } from '../words/resultText.ts';
import { shownVerdict } from '../words/shownVerdict.ts';

export function ComputedValues({ findings }: { readonly findings: readonly Finding[] }) {
  const { view, unitSystem } = useRun();
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
              <b>{workedOutText(finding, unitSystem)}</b>
            </span>
            {finding.verdict === 'no-limit-on-sheet' ? null : <VerdictMark verdict={finding.verdict} />}
            <span>{ratingText(finding, unitSystem)}</span>
            {/* What is not within stands among the findings above, with all it knows. */}
            {finding.verdict !== 'no-limit-on-sheet' && finding.verdict !== 'within'
              ? null
              : factWords(finding, unitSystem).map((fact) => <span key={fact}>{fact}</span>)}
            <span className="run-formula">{finding.basis.formula}</span>
            {volumeFactorText(finding) === '' ? null : <span className="run-formula">{volumeFactorText(finding)}</span>}
          </li>
        ))}
      </ul>
      {worksheetsAbout(computed).map(({ key, title }) => (
        <RouteLink key={key} to="worksheet" params={{ worksheetKey: key, visitId: view.visitId, runId: view.runId }}>
          Worksheet: {title}
        </RouteLink>
      ))}
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
  return [...byNumber.values()].flatMap((same) => {
    const verdict = shownVerdict(same);
    return same.find((one) => one.verdict === verdict) ?? same[0] ?? [];
  });
}

/** A clocked input against the rating of this site: which rating that is and by which rule, then how far off, as an interval. */
function ratingText({ basis }: Finding, unitSystem: UnitSystem): string {
  const { siteRatingKw, altitudeRule, deviationPct, lowestPct, highestPct } = basis.inputs;
  if (typeof siteRatingKw !== 'number') return '';
  const rating = `Site rating ${resultText({ value: siteRatingKw, unit: 'kW', plusMinus: null }, unitSystem)} (${altitudeRule})`;
  if (typeof deviationPct !== 'number' || typeof lowestPct !== 'number' || typeof highestPct !== 'number')
    return rating;
  return `${rating}: ${signed(deviationPct)} % (${signed(lowestPct)} to ${signed(highestPct)} %)`;
}

/** The one number of a clocked input that nobody typed: without it the formula gives another result by hand. */
function volumeFactorText({ basis }: Finding): string {
  const { volumeFactor, volumeFactorHow } = basis.inputs;
  return typeof volumeFactor === 'number' && volumeFactor !== 1
    ? `volume factor ${formatNumber(volumeFactor, 4)}, ${volumeFactorHow}`
    : '';
}

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${figures(value)}`;
}
