/** A safety test that was answered with a stop and then otherwise: both stand until a licensed person says which holds, and why. */
import type { SheetStep, StepItem } from './modelSheet.ts';
import type { RecordedAnswer } from './runRecord.ts';

export type FailedTest = {
  readonly failed: RecordedAnswer;
  /** What was answered last; "not possible" has no value and settles nothing. */
  readonly last: RecordedAnswer;
  /** A later good answer carries the reason. Who may give one is checked where it is written. */
  readonly isClosed: boolean;
};

/** `answers` of this item, oldest first. null: it never failed, or failed last and simply stops. */
export function failedTest(item: StepItem, answers: readonly RecordedAnswer[]): FailedTest | null {
  const position = answers.findLastIndex((answer) => saysStop(item, answer));
  const failed = answers[position];
  const since = answers.slice(position + 1);
  const last = since.at(-1);
  if (failed === undefined || last === undefined) return null;
  return { failed, last, isClosed: since.some((answer) => answer.value !== null && hasReason(answer)) };
}

/** Only a test that says stop: a "not yet" that was put right is how work goes. */
export function saysStop(item: StepItem, { value }: Pick<RecordedAnswer, 'value'>): boolean {
  return item.kind === 'choose' && item.options.some((one) => one.value === value && one.outcome === 'stop');
}

/** What only a licensed person may find, and may find to be a stop, is found with something; a plate or a notice is read. */
export function mayNameInstrument(item: StepItem, { who }: Pick<SheetStep, 'who'>): boolean {
  return who === 'licensed' && item.kind === 'choose' && item.options.some(({ outcome }) => outcome === 'stop');
}

function hasReason({ reason }: RecordedAnswer): boolean {
  return (reason?.trim() ?? '') !== '';
}
