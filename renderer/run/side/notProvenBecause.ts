/** Everything that keeps any of these findings from being proven, each reason once. Empty: all are proven. */
import type { Finding, NotProvenReason } from '../../../domain/judgement/finding.ts';

export function notProvenBecause(findings: readonly Finding[]): readonly NotProvenReason[] {
  return [...new Set(findings.flatMap(({ proof }) => (proof.proven ? [] : proof.because)))];
}
