/** What happened to an appliance, one line each. */
import type { HistoryEntry } from '../../electron/contract/history.ts';
import { capital } from '../kit/capital.ts';
import { COVER_DATE_WORDS } from '../kit/coverDates.ts';
import { FUEL_WORDS, JOB_KIND_WORDS, keyOf } from '../kit/tradeWords.ts';

export function historyWords({ kind, what, detail }: HistoryEntry): string {
  const rest = detail === null ? '' : `: ${detail}`;
  switch (kind) {
    case 'visit':
      return capital(lookUp(JOB_KIND_WORDS, what)) + (detail === null ? '' : `, ${detail.replaceAll('-', ' ')}`);
    case 'date':
      return `${capital(lookUp(COVER_DATE_WORDS, what))}${detail === null ? '' : ` (${detail})`}`;
    case 'registration':
      return what === 'confirmed'
        ? `Registration confirmed${detail === null ? '' : `, number ${detail}`}`
        : `Registration sent in${rest}`;
    case 'document':
      return what === 'draft' ? 'Packet built as a draft' : 'Packet built';
    case 'fuel':
      return `Fuel: ${lookUp(FUEL_WORDS, what)}${detail === null ? '' : `, conversion kit ${detail}`}`;
    case 'part':
      return `Part ${what} fitted${rest}`;
    case 'make-safe':
      return what === 'opened' ? `Made safe${rest}` : `Make-safe closed${rest}`;
    case 'owner':
      if (what === 'taken-back') return `Change of owner put back${rest}`;
      return what === 'mistaken' ? `Handed over by mistake${rest}` : `New owner${rest}`;
    case 'claim':
      return `Claim, ${what.replaceAll('-', ' ')}${rest}`;
    case 'message':
      return `Written for the customer${rest}`;
    case 'recall':
      return `Recall, ${RECALL_OUTCOME_WORDS[what] ?? what}${rest}`;
  }
}

const RECALL_OUTCOME_WORDS: Readonly<Record<string, string>> = {
  done: 'done',
  'not-affected': 'not affected',
  refused: 'refused by the customer',
};

function lookUp<K extends string>(words: Readonly<Record<K, string>>, text: string): string {
  const key = keyOf(words, text);
  return key === null ? text : words[key];
}
