/** A stretch of the day as people write it: `8–17`, `8:00-16:30`, `7.30 to 4 pm`. */
import { wallMinute } from '../../domain/schedule/wallClock.ts';
import { clockWords } from '../kit/dayWords.ts';
import { readTime } from './readTime.ts';

/** null: nothing typed; undefined: no stretch of a day. */
export function readSpan(text: string): { readonly fromMin: number; readonly toMin: number } | null | undefined {
  if (text.trim() === '') return null;
  const [from, to, ...rest] = text.split(/\s*(?:–|-|—|\bto\b)\s*/);
  if (from === undefined || to === undefined || rest.length > 0) return undefined;
  const fromMin = minutesOf(from);
  const toMin = to.trim() === '24' || to.trim() === '24:00' ? 1440 : minutesOf(to);
  if (fromMin === undefined || toMin === undefined || toMin <= fromMin) return undefined;
  return { fromMin, toMin };
}

export function spanWords(fromMin: number | null, toMin: number | null): string {
  return fromMin === null || toMin === null ? '' : `${clockWords(fromMin)}–${clockWords(toMin)}`;
}

function minutesOf(text: string): number | undefined {
  const time = readTime(text);
  if (time === null || time === undefined) return undefined;
  return wallMinute(time);
}
