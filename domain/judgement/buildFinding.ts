/** Puts a finding together from what a rule has to say; everything else is the empty answer. */
import type { Block } from '../procedure/modelSheet.ts';
import type { Finding, FindingBasis, Proof, Suggestion, Verdict } from './finding.ts';

export const PROVEN: Proof = { proven: true };

export type FindingParts = {
  readonly subject: string;
  readonly verdict: Verdict;
  readonly readingId?: string | null;
  readonly proof?: Proof;
  readonly blocks?: readonly Block[];
  readonly basis?: Partial<FindingBasis>;
  readonly suggestions?: readonly Suggestion[];
  readonly missing?: readonly string[];
  readonly makeSafe?: readonly string[];
  readonly leaveFirst?: boolean;
};

export function buildFinding(parts: FindingParts): Finding {
  return {
    readingId: parts.readingId ?? null,
    subject: parts.subject,
    verdict: parts.verdict,
    proof: parts.proof ?? PROVEN,
    blocks: parts.blocks ?? [],
    basis: { limit: null, from: 'none', source: null, sheet: null, formula: null, inputs: {}, ...parts.basis },
    suggestions: parts.suggestions ?? [],
    missing: parts.missing ?? [],
    makeSafe: parts.makeSafe ?? [],
    ...(parts.leaveFirst === true ? { leaveFirst: true as const } : {}),
  };
}
