/** All items of a step in order; a wait holds back what follows it in the step, and is held back by what precedes it. */
import type { ItemProgress, RunProgressInput } from '../progressTypes.ts';
import type { AskedStep } from './askedItems.ts';
import type { FindingsByItem } from './findingsByItem.ts';
import { isWait } from './isWait.ts';
import { holdsUp, itemProgress } from './itemProgress.ts';
import { ownProgress } from './ownProgress.ts';
import type { RecordByItem } from './recordByItem.ts';

export function stepItems(
  asked: AskedStep,
  findings: FindingsByItem,
  byItem: RecordByItem,
  input: RunProgressInput,
): readonly ItemProgress[] {
  const context = { input, byItem, step: asked.step };
  const done: ItemProgress[] = [];
  for (const one of asked.items) {
    const first = done.find((earlier) => holdsUp(earlier) && (isWait(earlier) || isWait(one.item)));
    const own = ownProgress(one.item, context);
    done.push(itemProgress(one, own, findings.ofItem.get(one.item.key) ?? [], first?.itemKey ?? null, context));
  }
  return done;
}
