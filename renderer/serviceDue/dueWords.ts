/** What falls due, months and reminders in words. */
import type { DUE_KINDS } from '../../electron/contract/dues.ts';
import { dayWords } from '../kit/dayWords.ts';

export const DUE_KIND_WORDS: Readonly<Record<(typeof DUE_KINDS)[number], string>> = {
  service: 'Services',
  'first-call': 'Calls after 2 to 4 weeks',
  'look-in': 'Look-ins after 6 to 12 months',
};

/** `Oct 2026` */
export function monthWords(month: string): string {
  return dayWords(`${month}-01`).replace(/^1 /, '');
}

/** `12 days to the latest day`, `latest day was 3 days ago` */
export function daysToLatestWords(days: number): string {
  if (days < 0) return days === -1 ? 'latest day was yesterday' : `latest day was ${-days} days ago`;
  if (days === 0) return 'today is the latest day';
  return days === 1 ? '1 day to the latest day' : `${days} days to the latest day`;
}

export function daysToLatestTone(days: number): 'stop' | 'bad' | 'doubt' | 'plain' {
  if (days < 0) return 'stop';
  if (days <= 14) return 'bad';
  return days <= 30 ? 'doubt' : 'plain';
}

/** `before-30` → `30 days before`; `week-2` → `week 2 after the last one`. */
export function stageWords(stage: string): string {
  const [what = '', count = ''] = stage.split('-');
  if (what === 'before') return `${count} days before`;
  if (what === 'week') return `week ${count} of grace`;
  return stage === 'first-call' ? 'first call' : 'look-in';
}
