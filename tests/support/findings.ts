/** Picks findings out of a judgement by subject; a rule that stays silent fails the test that expects it. */
import type { Finding, NotProvenReason, SuggestionCode } from '../../domain/judgement/finding.ts';

export function findingsOn(findings: readonly Finding[], subject: string): readonly Finding[] {
  return findings.filter((finding) => finding.subject === subject);
}

/** The newest sample's, where there are several. */
export function findingOn(findings: readonly Finding[], subject: string): Finding {
  const found = findingsOn(findings, subject).at(-1);
  if (found === undefined) {
    throw new Error(`nothing on ${subject}; there is ${[...new Set(findings.map((one) => one.subject))].join(', ')}`);
  }
  return found;
}

export function suggestionCodes(findings: readonly Finding[]): readonly SuggestionCode[] {
  return [...new Set(findings.flatMap((finding) => finding.suggestions.map(({ code }) => code)))].sort();
}

export function reasonsOf(finding: Finding): readonly NotProvenReason[] {
  return finding.proof.proven ? [] : finding.proof.because;
}
