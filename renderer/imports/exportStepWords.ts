/** What an export is just writing, in one line, and its share of the bar. */
import type { OutputOf } from '../../electron/contract/index.ts';

type Step = Extract<OutputOf<'exports.goOn'>, { isDone: false }>;

export function exportStepWords(step: Step | null): string {
  if (step === null) return 'Beginning …';
  const { writing, tablesDone, tableCount, filesDone, fileCount } = step;
  if (filesDone > 0) return `${filesDone} of ${fileCount} photos and documents put in.`;
  return `Writing ${writing.replaceAll(/[_-]/g, ' ')}: ${tablesDone} of ${tableCount} tables written.`;
}

/** A photo takes about as long as some hundred rows. */
const ROWS_PER_FILE = 100;

export function exportStepPct(step: Step | null): number {
  if (step === null) return 0;
  const whole = step.rowCount + step.fileCount * ROWS_PER_FILE;
  return ((step.rowsDone + step.filesDone * ROWS_PER_FILE) / Math.max(1, whole)) * 100;
}
