/** The findings of one step, heaviest first. Those that are within and proven are only counted. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import { heaviestFirst } from '../field/liveFindings.ts';
import { FindingLine } from './FindingLine.tsx';

export function FindingsOfStep({ findings }: { readonly findings: readonly Finding[] }) {
  const judged = findings.filter((finding) => finding.verdict !== 'no-limit-on-sheet' || !finding.proof.proven);
  const quiet = judged.filter(isQuiet);
  const loud = heaviestFirst(judged.filter((finding) => !isQuiet(finding)));
  return (
    <section className="run-side-part" aria-label="Findings of this step">
      <h2>Findings</h2>
      {findings.length === 0 ? <p className="lo-faint">Nothing read in this step yet.</p> : null}
      {loud.length === 0 ? null : (
        <ul className="run-findings">
          {loud.map((finding) => (
            <FindingLine
              key={`${finding.subject} ${finding.readingId} ${JSON.stringify(finding.basis)}`}
              finding={finding}
            />
          ))}
        </ul>
      )}
      {quiet.length === 0 ? null : <p className="lo-faint">{quiet.length} within the sheet.</p>}
    </section>
  );
}

function isQuiet(finding: Finding): boolean {
  return finding.verdict === 'within' && finding.proof.proven;
}
