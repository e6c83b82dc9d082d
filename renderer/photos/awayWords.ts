/** How far a picture's time lies from the visit: `2 h 3 min before the visit began`. */
import { durationWords } from '../form/readTime.ts';

export function awayWords(awayS: number): string {
  return awayS < 0 ? `${lengthWords(awayS)} before the visit began` : `${lengthWords(awayS)} after now`;
}

export function lengthWords(seconds: number): string {
  const minutes = Math.round(Math.abs(seconds) / 60);
  const days = Math.floor(minutes / 1440);
  return days > 1 ? `${days} days` : durationWords(minutes);
}
