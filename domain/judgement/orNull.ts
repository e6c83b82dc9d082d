/** A formula outside its range has no number here: what hangs on it can't be judged. */
import type { Result } from '../result.ts';

export function orNull<T>(result: Result<T, unknown>): T | null {
  return result.ok ? result.value : null;
}
