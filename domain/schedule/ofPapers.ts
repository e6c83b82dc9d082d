/** What is said once of a person and not of each of their visits: it would hide the visits that really do not fit. */
import type { Conflict } from './dayConflicts.ts';
import { isForbidding } from './obstacles.ts';

export function isOfPapers(conflict: Conflict): boolean {
  return (
    conflict.code === 'obstacle' &&
    (isOfPlace(conflict) || (conflict.obstacle.code === 'no-instrument' && !isForbidding(conflict.obstacle)))
  );
}

/** A question to be asked once, which keeps nobody from the work. */
export function isOfPlace(conflict: Conflict): boolean {
  return conflict.code === 'obstacle' && conflict.obstacle.code === 'licence-elsewhere';
}
