/**
 * How far a run has come, from its sheet, its record and what the judgement says: which steps may be opened, what each
 * item still lacks, what keeps the burner off, the visit open and the registration back. Nothing of it is stored.
 */
import { askedItems } from './progress/askedItems.ts';
import { findingsByItem } from './progress/findingsByItem.ts';
import { gatesOf } from './progress/gates.ts';
import { nextItem } from './progress/nextItem.ts';
import { recordByItem } from './progress/recordByItem.ts';
import { runBlockers } from './progress/runBlockers.ts';
import { stepItems } from './progress/stepItems.ts';
import { stepLocks } from './progress/stepLocks.ts';
import type { ItemProgress, RunProgress, RunProgressInput, StepLock, StepState } from './progressTypes.ts';

export function runProgress(input: RunProgressInput): RunProgress {
  const steps = input.sheet[input.steps] ?? [];
  const byItem = recordByItem(input.record);
  const asked = askedItems(steps, byItem, input.sheet, input.findings);
  const findings = findingsByItem(input, asked, byItem);
  const itemsByStep = new Map(asked.map((one) => [one.step.key, stepItems(one, findings, byItem, input)] as const));
  const gates = gatesOf([...itemsByStep.values()].flat(), runBlockers(input, steps, byItem, findings.ofRun));
  const progress = steps.map((step) => {
    const items = itemsByStep.get(step.key) ?? [];
    const lockedBecause = stepLocks(step, steps, itemsByStep, gates);
    return { stepKey: step.key, state: stateOf(items, lockedBecause), lockedBecause, items };
  });
  return { steps: progress, gates, nextItem: nextItem(progress) };
}

function stateOf(items: readonly ItemProgress[], lockedBecause: readonly StepLock[]): StepState {
  if (items.every((item) => item.state === 'answered' || item.state === 'not-possible')) return 'done';
  return lockedBecause.length > 0 ? 'locked' : 'open';
}
