/** Which clock a picture's time comes from, and what speaks against it. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { awayWords, lengthWords } from './awayWords.ts';

export type PhotoTime = Pick<
  OutputOf<'photos.match'>[number],
  'isFromCamera' | 'readIn' | 'isProven' | 'doubtS' | 'when' | 'awayS' | 'takenAt'
>;

export function clockWords(photo: PhotoTime): string {
  return [clockOf(photo), against(photo)].filter((words) => words !== '').join('; ');
}

function clockOf({ takenAt, isFromCamera, readIn, isProven }: PhotoTime): string {
  if (takenAt === null) return '';
  if (isProven) return 'time proven by the camera’s satellite clock';
  if (!isFromCamera) return 'the file’s own date';
  return readIn === null
    ? 'by the camera’s clock'
    : `by the camera’s clock, taken to be the firm’s time (${placeOf(readIn)}): the picture names no time zone`;
}

function against({ when, awayS, doubtS }: PhotoTime): string {
  switch (when) {
    case 'during':
      return '';
    case 'outside':
      return awayWords(awayS);
    case 'idle':
      return `${lengthWords(awayS)} ${awayS < 0 ? 'before' : 'after'} anything was recorded`;
    case 'doubted':
      return `it may be ${lengthWords(doubtS)} ${doubtS > 0 ? 'later' : 'earlier'} than that`;
    case 'unknown':
      return 'matched by its order only';
  }
}

/** `America/Halifax` is Halifax. */
function placeOf(zone: string): string {
  return zone.split('/').at(-1)?.replaceAll('_', ' ') ?? zone;
}
