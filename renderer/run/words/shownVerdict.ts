/** The one verdict to show for several findings: what has no limit or waits for another reading says nothing beside a real one. */
import type { Finding, Verdict } from '../../../domain/judgement/finding.ts';
import { heaviestVerdict } from '../../../domain/judgement/verdictRank.ts';

export function shownVerdict(findings: readonly Finding[]): Verdict | undefined {
  return (
    heaviestVerdict(findings.filter((finding) => finding.verdict !== 'no-limit-on-sheet' && !waitsForMore(finding))) ??
    heaviestVerdict(findings.filter((finding) => !waitsForMore(finding)))
  );
}

/** Something that takes several readings, and not all of them are there yet. */
export function waitsForMore(finding: Finding): boolean {
  return finding.verdict === 'cannot-judge' && /^(?:relation|computed):/.test(finding.subject);
}
