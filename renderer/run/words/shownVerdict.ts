/** The one verdict to show for several findings. That something worked out has no limit says nothing beside a real verdict. */
import type { Finding, Verdict } from '../../../domain/judgement/finding.ts';
import { heaviestVerdict } from '../../../domain/judgement/verdictRank.ts';

export function shownVerdict(findings: readonly Finding[]): Verdict | undefined {
  return (
    heaviestVerdict(findings.filter((finding) => finding.verdict !== 'no-limit-on-sheet')) ?? heaviestVerdict(findings)
  );
}
