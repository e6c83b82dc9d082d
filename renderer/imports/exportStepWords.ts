/** What an export is just writing, in one line. */
import type { OutputOf } from '../../electron/contract/index.ts';

type Step = Extract<OutputOf<'exports.goOn'>, { isDone: false }>;

export function exportStepWords(step: Step | null): string {
  if (step === null) return 'Beginning …';
  const { writing, tablesDone, tableCount } = step;
  return `Writing ${writing.replaceAll(/[_-]/g, ' ')}: ${tablesDone} of ${tableCount} tables written.`;
}
