/** Items that take time by themselves. Whether such a wait is proven is for its own rule to say, on its newest run. */
import type { StepItem } from '../modelSheet.ts';

export function isWait(item: Pick<StepItem, 'kind'>): boolean {
  return item.kind === 'hold' || item.kind === 'tuning';
}
