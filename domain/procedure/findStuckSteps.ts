/**
 * Steps of a sheet that no order of work could ever open: a hold point that waits for itself. Found by walking the
 * sheet as if every item could be answered the moment it is reached.
 */

import type { Block, SheetStep } from './modelSheet.ts';
import { isWait } from './progress/isWait.ts';

export function findStuckSteps(steps: readonly SheetStep[]): readonly string[] {
  const settled = new Set<string>();
  const opened = new Set<string>();
  for (let before = -1; before !== settled.size + opened.size; ) {
    before = settled.size + opened.size;
    for (const step of steps) {
      if (opened.has(step.key) || canOpen(step, steps, settled)) {
        opened.add(step.key);
        settleItems(step, settled);
      }
    }
  }
  return steps.filter((step) => step.items.some((item) => !settled.has(item.key))).map((step) => step.key);
}

function canOpen(step: SheetStep, steps: readonly SheetStep[], settled: ReadonlySet<string>): boolean {
  const earlierAreDone = step.after.every((earlier) =>
    steps.find((one) => one.key === earlier)?.items.every((item) => settled.has(item.key)),
  );
  return earlierAreDone && (step.needsClear === null || isClear(step.needsClear, steps, settled));
}

function isClear(
  block: Exclude<Block, 'registration'>,
  steps: readonly SheetStep[],
  settled: ReadonlySet<string>,
): boolean {
  return steps
    .filter((step) => step.needsClear !== block)
    .every((step) => step.items.every((item) => !item.blocks.includes(block) || settled.has(item.key)));
}

function settleItems(step: SheetStep, settled: Set<string>): void {
  let isBehindWait = false;
  for (const [index, item] of step.items.entries()) {
    const earlier = step.items.slice(0, index);
    const hangsOn = item.onlyFor?.answer?.item ?? item.onlyFor?.foundOutside;
    const conditionIsKnown = hangsOn === undefined || settled.has(hangsOn);
    const mayRun = !isWait(item) || earlier.every((one) => settled.has(one.key));
    if (conditionIsKnown && mayRun && !isBehindWait) settled.add(item.key);
    if (isWait(item) && !settled.has(item.key)) isBehindWait = true;
  }
}
