/** Where Enter goes from an item: the next open one of the same step, else wherever the run as a whole has work. */
import type { ItemAddress, RunProgress } from '../../../domain/procedure/progressTypes.ts';

export function itemAfter(progress: RunProgress, from: ItemAddress): ItemAddress | null {
  const items = progress.steps.find((step) => step.stepKey === from.stepKey)?.items ?? [];
  const position = items.findIndex((item) => item.itemKey === from.itemKey);
  const later = items.slice(position + 1).find((item) => item.state === 'open');
  if (later !== undefined) return { stepKey: later.stepKey, itemKey: later.itemKey };
  const next = progress.nextItem;
  // A wait under way, or a finding that stands, is not a reason to be thrown back onto the item just left.
  return next !== null && isSameItem(next, from) ? itemWithWork(progress, from) : next;
}

/** Where a step is taken up: its first open item, else the first that runs or is blocked, else the first. */
export function itemToOpen(progress: RunProgress, stepKey: string): ItemAddress | null {
  const items = progress.steps.find((step) => step.stepKey === stepKey)?.items ?? [];
  const item =
    items.find((one) => one.state === 'open') ??
    items.find((one) => one.state === 'running') ??
    items.find((one) => one.state === 'blocked-by-finding') ??
    items[0];
  return item === undefined ? null : { stepKey, itemKey: item.itemKey };
}

/** The step that is asked for, else the one last worked in, else wherever work is. */
export function whereToResume(
  progress: RunProgress,
  askedStepKey: string | null,
  lastStepKey: string | null,
): ItemAddress | null {
  const asked = askedStepKey === null ? null : itemToOpen(progress, askedStepKey);
  if (asked !== null) return asked;
  const last = progress.steps.find((step) => step.stepKey === lastStepKey);
  // Stopped between the last answer of a step and the first of the next: nothing is left to do in the one before.
  const isThrough = last === undefined || last.state === 'done';
  if (isThrough && progress.nextItem !== null) return progress.nextItem;
  return itemToOpen(progress, last?.stepKey ?? progress.steps[0]?.stepKey ?? '');
}

/** One item up or down in reading order, across steps that may be entered. */
export function itemBeside(progress: RunProgress, from: ItemAddress, by: 1 | -1): ItemAddress | null {
  const items = progress.steps.filter((step) => step.state !== 'locked').flatMap((step) => step.items);
  const position = items.findIndex((item) => isSameItem(item, from));
  const item = position < 0 ? undefined : items[position + by];
  return item === undefined ? null : { stepKey: item.stepKey, itemKey: item.itemKey };
}

export function isSameItem(one: ItemAddress, other: ItemAddress): boolean {
  return one.stepKey === other.stepKey && one.itemKey === other.itemKey;
}

function itemWithWork(progress: RunProgress, except: ItemAddress): ItemAddress | null {
  const item = progress.steps
    .filter((step) => step.state === 'open')
    .flatMap((step) => step.items)
    .find((one) => (one.state === 'open' || one.state === 'running') && !isSameItem(one, except));
  return item === undefined ? null : { stepKey: item.stepKey, itemKey: item.itemKey };
}
