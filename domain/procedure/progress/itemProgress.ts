/** One item with everything that has a say in it: its record, the findings, the order of work and what it blocks. */
import { changedParts } from '../changedParts.ts';
import { BLOCKS, type Block, type StepItem } from '../modelSheet.ts';
import type { ItemProgress, ItemReason, ItemState } from '../progressTypes.ts';
import type { AskedItem } from './askedItems.ts';
import type { OpenFinding } from './findingsByItem.ts';
import { isBefore } from './instants.ts';
import type { ItemContext, OwnProgress } from './itemContext.ts';

/** `comesFirst`: the item of the same step that must be finished before this one may be begun. */
export function itemProgress(
  asked: AskedItem,
  own: OwnProgress,
  findings: readonly OpenFinding[],
  comesFirst: string | null,
  context: ItemContext,
): ItemProgress {
  const { item } = asked;
  const waitsFor = own.state === 'open' ? (asked.waitsForAnswerOf ?? comesFirst) : null;
  const state = stateOf(own, waitsFor, findings);
  const blocks = new Set<Block>(state === 'answered' || state === 'not-possible' ? [] : item.blocks);
  for (const one of findings) for (const block of blocksOfFinding(one, context)) blocks.add(block);
  if (own.isStop === true) for (const block of blocksOfStop(own.lastAt, context)) blocks.add(block);
  return {
    stepKey: context.step.key,
    itemKey: item.key,
    kind: item.kind,
    state,
    because: [
      ...(state === 'answered' || state === 'not-possible' ? [] : askedForPart(item, context)),
      ...(waitsFor === null ? own.because : [{ code: 'waits-for' as const, itemKey: waitsFor }]),
      ...findings.map(({ finding }) => ({ code: 'finding' as const, finding })),
    ],
    blocks: BLOCKS.filter((block) => blocks.has(block)),
    timer: own.timer ?? null,
    tuning: own.tuning ?? null,
  };
}

function askedForPart(item: StepItem, { input }: ItemContext): readonly ItemReason[] {
  const need = item.onlyFor?.changedPart;
  const [changed] = need === undefined ? [] : changedParts(input.record, input.sheet, need);
  return changed === undefined ? [] : [{ code: 'asked-for-part', partLabel: changed.part.label }];
}

/** Whether what comes after has to wait: not for something that only the registration still lacks. */
export function holdsUp(item: ItemProgress): boolean {
  if (item.state === 'answered' || item.state === 'not-possible') return false;
  return item.state !== 'blocked-by-finding' || item.blocks.some((block) => block !== 'registration');
}

function stateOf(own: OwnProgress, waitsFor: string | null, findings: readonly OpenFinding[]): ItemState {
  if (waitsFor !== null) return 'waiting';
  if (own.state === 'open' || own.state === 'running') return own.state;
  return own.state === 'blocked' || findings.length > 0 ? 'blocked-by-finding' : own.state;
}

/**
 * What was found with the burner on can only be read again with the burner on. So a reading that merely lacks proof
 * never shuts the firing gate behind itself; one that is outside or a stop does, until a licensed person has closed a
 * make-safe after it.
 */
export function blocksOfFinding(open: OpenFinding, context: Pick<ItemContext, 'input' | 'step'>): readonly Block[] {
  const blocks = open.finding.verdict === 'stop' ? BLOCKS : open.finding.blocks;
  if (!isBehindFiring(context)) return blocks;
  return open.isHard && !isReleased(open.readAt, context) ? blocks : blocks.filter((block) => block !== 'firing');
}

function blocksOfStop(answeredAt: string | null, context: ItemContext): readonly Block[] {
  return isBehindFiring(context) && isReleased(answeredAt, context) ? ['leaving', 'registration'] : BLOCKS;
}

function isBehindFiring(context: Pick<ItemContext, 'step'>): boolean {
  return context.step.needsClear === 'firing';
}

function isReleased(foundAt: string | null, context: Pick<ItemContext, 'input'>): boolean {
  const releasedAt = context.input.firingReleasedAt ?? null;
  return foundAt !== null && releasedAt !== null && isBefore(foundAt, releasedAt);
}
