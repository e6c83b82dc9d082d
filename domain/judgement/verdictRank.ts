/** Verdicts in the order in which they weigh: a screen that can show one shows the heaviest. */
import type { Finding, Verdict } from './finding.ts';

const RANK: Readonly<Record<Verdict, number>> = {
  within: 0,
  'no-limit-on-sheet': 1,
  'near-the-edge': 2,
  'cannot-tell-apart': 3,
  'cannot-judge': 4,
  outside: 5,
  stop: 6,
};

export function verdictRank(verdict: Verdict): number {
  return RANK[verdict];
}

/** undefined: nothing was judged. */
export function heaviestVerdict(findings: readonly Pick<Finding, 'verdict'>[]): Verdict | undefined {
  return findings.reduce<Verdict | undefined>(
    (heaviest, { verdict }) => (heaviest === undefined || RANK[verdict] > RANK[heaviest] ? verdict : heaviest),
    undefined,
  );
}
