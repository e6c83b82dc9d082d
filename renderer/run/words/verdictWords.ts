/** The words of a verdict. The tool never says that something is safe. */
import type { Verdict } from '../../../domain/judgement/finding.ts';

const WORDS: Readonly<Record<Verdict, string>> = {
  within: 'within',
  'near-the-edge': 'near the edge',
  outside: 'outside',
  stop: 'stop: make safe',
  'no-limit-on-sheet': 'no limit on the sheet',
  'cannot-tell-apart': 'can’t tell apart from the limit',
  'cannot-judge': 'can’t judge',
};

export function verdictWords(verdict: Verdict): string {
  return WORDS[verdict];
}
