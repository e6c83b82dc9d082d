/** What is said once of a person and not of each of their visits: it would hide the visits that really do not fit. */
import type { Conflict } from '../../domain/schedule/dayConflicts.ts';

export function isOfPapers(conflict: Conflict): boolean {
  return conflict.code === 'obstacle' && conflict.obstacle.code === 'analyser-out-of-date';
}
