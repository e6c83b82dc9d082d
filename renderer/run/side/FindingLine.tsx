/** One finding: verdict and proof as word and shape, what it is about, the limit it was held against and who asks for that. */
import type { Finding, Verdict } from '../../../domain/judgement/finding.ts';
import { preferredUnit } from '../../../domain/quantity/preferredUnit.ts';
import { ProofMark, VerdictMark } from '../../kit/VerdictMark.tsx';
import { useRun } from '../state/RunContext.ts';
import { factWords } from '../words/factWords.ts';
import { basisWords, subjectWords } from '../words/findingWords.ts';
import { limitWords } from '../words/limitWords.ts';
import { workedOutText } from '../words/resultText.ts';

/** What would settle it, where something would. */
const LACKING: Partial<Record<Verdict, string>> = {
  'cannot-judge': 'missing',
  'cannot-tell-apart': 'wanted',
  outside: 'missing',
};

export function FindingLine({
  finding,
  showsProof = true,
}: {
  readonly finding: Finding;
  /** False where the proof is said once for several findings. */
  readonly showsProof?: boolean;
}) {
  const { view, unitSystem } = useRun();
  const { limit, result, formula } = finding.basis;
  const basis = basisWords(finding);
  return (
    <li className="run-finding" data-verdict={finding.verdict}>
      <span className="run-finding-head">
        <VerdictMark verdict={finding.verdict} />
        <b>{subjectWords(finding, view.sheet)}</b>
        {result === undefined ? null : <span>{workedOutText(finding, unitSystem)}</span>}
      </span>
      {factWords(finding, unitSystem).map((fact) => (
        <span key={fact}>{fact}</span>
      ))}
      {limit === null ? null : (
        <span>{limitWords(limit.quantity, limit, preferredUnit(limit.quantity, unitSystem))}</span>
      )}
      {basis === '' ? null : <span className="lo-faint">{basis}</span>}
      {formula === null ? null : <span className="run-formula">{formula}</span>}
      {finding.missing.length > 0 && finding.verdict in LACKING ? (
        <span>
          {LACKING[finding.verdict]}: {finding.missing.join(', ')}
        </span>
      ) : null}
      {finding.proof.proven || !showsProof ? null : <ProofMark proof={finding.proof} />}
    </li>
  );
}
