/** Where Enter goes: the first thing that can be done now, else the first wait under way, else the first bad finding. */
import type { ItemAddress, ItemState, StepProgress } from '../progressTypes.ts';

const ORDER: readonly ItemState[] = ['open', 'running', 'blocked-by-finding'];

export function nextItem(steps: readonly StepProgress[]): ItemAddress | null {
  const candidates = steps.filter((step) => step.state === 'open').flatMap((step) => step.items);
  for (const state of ORDER) {
    const found = candidates.find((item) => item.state === state);
    if (found !== undefined) return { stepKey: found.stepKey, itemKey: found.itemKey };
  }
  return null;
}
