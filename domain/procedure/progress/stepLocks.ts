/** Why a step may not be opened: a step that comes first, or a hold point that is not clear. */
import type { SheetStep } from '../modelSheet.ts';
import type { Gates, ItemProgress, StepLock } from '../progressTypes.ts';
import { holdsUp } from './itemProgress.ts';

export function stepLocks(
  step: SheetStep,
  steps: readonly SheetStep[],
  itemsByStep: ReadonlyMap<string, readonly ItemProgress[]>,
  gates: Gates,
): readonly StepLock[] {
  const locks: StepLock[] = [];
  for (const stepKey of step.after) {
    const itemKeys = (itemsByStep.get(stepKey) ?? []).filter(holdsUp).map((item) => item.itemKey);
    if (itemKeys.length > 0) locks.push({ code: 'step-first', stepKey, itemKeys });
  }
  if (step.needsClear !== null) {
    const block = step.needsClear;
    const behind = new Set(steps.filter((one) => one.needsClear === block).map((one) => one.key));
    // A sign-off blocks leaving and stands behind it: what is behind the hold point cannot keep it shut. A stop found
    // with the burner on is the exception, and keeps the burner off.
    const blockers =
      block === 'firing'
        ? gates.firing
        : gates.leaving.filter((one) => one.stepKey === null || !behind.has(one.stepKey));
    if (blockers.length > 0) locks.push({ code: 'hold-point', block, blockers });
  }
  return locks;
}
