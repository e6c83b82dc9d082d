/** How far a picture's time lies from the visit: `2 h 3 min before the visit began`. */
import { durationWords } from '../form/readTime.ts';

export function awayWords(awayS: number): string {
  const minutes = Math.round(Math.abs(awayS) / 60);
  const days = Math.floor(minutes / 1440);
  const length = days > 1 ? `${days} days` : durationWords(minutes);
  return awayS < 0 ? `${length} before the visit began` : `${length} after now`;
}
