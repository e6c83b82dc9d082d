/** What stands open in a run, as data: the words are made where they are shown. */
import type { Block } from './modelSheet.ts';

/** One thing in the way of firing, leaving, registration or of opening a step. */
export type ProgressBlocker = {
  /** What it stands in the way of; null: only of the step's own completion. */
  readonly blocks: Block | null;
  readonly stepKey: string | null;
  readonly itemKey: string | null;
  readonly readingId: string | null;
  readonly why:
    | 'not-answered'
    | 'answered-no'
    | 'choice-needs-cause'
    | 'stop'
    | 'outside'
    | 'not-proven'
    | 'cannot-judge'
    | 'too-few-samples'
    | 'hold-not-over'
    | 'hold-not-proven'
    | 'tuning-not-finished'
    | 'tuning-interrupted'
    | 'photo-missing'
    | 'sign-off-missing'
    | 'lapsed'
    | 'earlier-step-open'
    | 'make-safe-open';
};
