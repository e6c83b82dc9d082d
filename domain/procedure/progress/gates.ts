/** For firing, leaving and registration: everything that still keeps the gate shut, the run as a whole first. */
import type { Block } from '../modelSheet.ts';
import type { Gates, ItemProgress, ProgressBlocker } from '../progressTypes.ts';
import type { RunBlocker } from './runBlockers.ts';

export function gatesOf(items: readonly ItemProgress[], ofRun: readonly RunBlocker[]): Gates {
  return {
    firing: blockersOf('firing', items, ofRun),
    leaving: blockersOf('leaving', items, ofRun),
    registration: blockersOf('registration', items, ofRun),
  };
}

function blockersOf(
  block: Block,
  items: readonly ItemProgress[],
  ofRun: readonly RunBlocker[],
): readonly ProgressBlocker[] {
  return [
    ...ofRun
      .filter((one) => one.blocks.includes(block))
      .map((one) => ({ stepKey: null, itemKey: null, because: [one.reason] })),
    ...items
      .filter((item) => item.blocks.includes(block))
      .map((item) => ({ stepKey: item.stepKey, itemKey: item.itemKey, because: item.because })),
  ];
}
