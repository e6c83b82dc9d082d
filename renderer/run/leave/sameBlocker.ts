/** Whether two gates are held shut by the same thing. */
import type { ProgressBlocker } from '../../../domain/procedure/progressTypes.ts';

export function sameBlocker(one: ProgressBlocker, other: ProgressBlocker): boolean {
  if (one.stepKey !== other.stepKey || one.itemKey !== other.itemKey) return false;
  return one.itemKey !== null || JSON.stringify(one.because) === JSON.stringify(other.because);
}
