/** What notices, their doubts and outcomes are called on screen. */
import type { OpenNotice, RecallOutcome } from '../../domain/recalls/openNotices.ts';
import type { RecallDoubt } from '../../domain/recalls/recallMatch.ts';
import type { RECALL_SHOWS } from '../../electron/contract/recalls.ts';

/** How a notice is spoken of: its number, or else what it is about. */
export function noticeName({ title, number }: Pick<OpenNotice, 'title' | 'number'>): string {
  return number === null ? `notice “${title}”` : `notice ${number} (${title})`;
}

export const DOUBT_WORDS: Readonly<Record<RecallDoubt, string>> = {
  'serial-missing': 'no serial on file',
  'serial-look-alike': 'the serial fits if letters and figures that look alike are exchanged: look at the plate',
  'serial-without-number': 'the serial on file has no number in it',
  'altitude-missing': 'the altitude of the site is not known',
};

export const OUTCOME_WORDS: Readonly<Record<RecallOutcome, string>> = {
  done: 'done as the notice asks',
  'not-affected': 'looked at: not affected',
  refused: 'the owner does not want it',
};

export const SHOW_WORDS: Readonly<Record<(typeof RECALL_SHOWS)[number], string>> = {
  open: 'nothing settled yet',
  doubtful: 'can’t be told from the files',
  settled: 'settled',
  all: 'all',
};
