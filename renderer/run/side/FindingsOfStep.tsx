/**
 * The findings of one step, heaviest first; why any of them is not proven is said once. Those that are within are only
 * counted, and what takes a reading of a later step is only named.
 */
import type { Finding } from '../../../domain/judgement/finding.ts';
import { ProofMark } from '../../kit/VerdictMark.tsx';
import { heaviestFirst } from '../field/liveFindings.ts';
import { useRun } from '../state/RunContext.ts';
import { subjectWords } from '../words/findingWords.ts';
import { waitsForMore } from '../words/shownVerdict.ts';
import { FindingLine } from './FindingLine.tsx';
import { notProvenBecause } from './notProvenBecause.ts';

export function FindingsOfStep({ findings }: { readonly findings: readonly Finding[] }) {
  const { view } = useRun();
  const waiting = findings.filter(waitsForMore);
  const judged = findings.filter((finding) => finding.verdict !== 'no-limit-on-sheet' && !waitsForMore(finding));
  const loud = heaviestFirst(judged.filter((finding) => finding.verdict !== 'within'));
  const within = judged.length - loud.length;
  const because = notProvenBecause(findings);
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
              showsProof={false}
            />
          ))}
        </ul>
      )}
      {within === 0 ? null : <p className="lo-faint">{within} within the sheet.</p>}
      {findings.length > 0 && judged.length === 0 && waiting.length === 0 ? (
        <p className="lo-faint">No limit on the sheet for what was read.</p>
      ) : null}
      {because.length === 0 ? null : <ProofMark proof={{ proven: false, because }} />}
      {waiting.map((finding) => (
        <p key={finding.subject} className="lo-faint">
          {subjectWords(finding, view.sheet)}: waits for {finding.missing.join(', ') || 'more readings'}
        </p>
      ))}
    </section>
  );
}
