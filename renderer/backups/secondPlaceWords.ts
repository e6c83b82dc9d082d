/** What is known of the second place, in words. */
import type { SecondPlaceStatus } from '../../electron/contract/backups.ts';
import { instantWords } from '../kit/dayWords.ts';

const TROUBLE = {
  'not-reached': 'it is not there: not plugged in, not reached, or another disk',
  'disk-full': 'it is full',
  'read-only': 'nothing may be written there',
  locked: 'another program holds a file there',
  damaged: 'a file there is damaged',
  failed: 'it refused',
} as const;

/** What is there, and until when; nothing is said to be there that was not read back. */
export function secondPlaceWords({ lastAt, lastCopyAt }: Pick<SecondPlaceStatus, 'lastAt' | 'lastCopyAt'>): string {
  if (lastAt === null) return 'Nothing has been copied there yet.';
  const records =
    lastCopyAt === null ? 'No backup is there yet.' : `Everything recorded until ${instantWords(lastCopyAt)} is there.`;
  return `${records} Photos and files until ${instantWords(lastAt)}.`;
}

export function troubleWords({ at, why }: NonNullable<SecondPlaceStatus['trouble']>): string {
  return `Not copied at ${instantWords(at)}: ${TROUBLE[why]}.`;
}
