/** What packets in bulk, their states and their failures are called on screen. */
import type { PacketBatch, PacketBatchItem } from '../../electron/contract/packetBatches.ts';

export const ITEM_STATE_WORDS: Readonly<Record<PacketBatchItem['state'], string>> = {
  waiting: 'waiting',
  built: 'built',
  failed: 'not built',
};

export function whyWords({ why, gapCount }: Pick<PacketBatchItem, 'why' | 'gapCount'>): string {
  switch (why) {
    case null:
      return '';
    case 'not-sealed':
      return 'the record is not sealed yet';
    case 'gaps-open':
      return gapCount === 1 ? '1 thing is missing' : `${gapCount ?? 'some'} things are missing`;
    case 'not-found':
      return 'its visit is not on file any more';
    case 'internal':
      return 'something went wrong in the program; it is in log/faults.log of the data folder';
  }
}

export function progressWords({ total, built, failed, waiting }: PacketBatch): string {
  const parts = [`${built} of ${total} built`];
  if (failed > 0) parts.push(`${failed} not built`);
  if (waiting > 0) parts.push(`${waiting} waiting`);
  return parts.join(', ');
}

export function kindWords({ isDraft, total }: Pick<PacketBatch, 'isDraft' | 'total'>): string {
  const what = isDraft ? 'draft' : 'final packet';
  return total === 1 ? `1 ${what}` : `${total} ${what}s`;
}

/** Where a batch that nobody is working on stands. */
export function restingWords({ waiting, cancelledAt }: PacketBatch): string {
  if (waiting === 0) return 'finished';
  return cancelledAt === null ? 'interrupted' : 'stopped';
}
