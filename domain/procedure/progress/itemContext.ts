/** What an item's own rule may look at, and what it answers with. */
import type { SheetStep, StepItem } from '../modelSheet.ts';
import type { ItemReason, ItemTimer, RunProgressInput, TuningProgress } from '../progressTypes.ts';
import type { RecordByItem } from './recordByItem.ts';

export type ItemContext = {
  readonly input: RunProgressInput;
  readonly byItem: RecordByItem;
  readonly step: SheetStep;
};

/** An item by its own record alone, before findings, age and the order of work have their say. */
export type OwnProgress = {
  readonly state: 'open' | 'running' | 'answered' | 'not-possible' | 'blocked';
  readonly because: readonly ItemReason[];
  /** The answer itself says: make safe now. */
  readonly isStop?: boolean;
  /** When it was last answered, for what grows too old. */
  readonly lastAt: string | null;
  readonly timer?: ItemTimer;
  readonly tuning?: TuningProgress;
};

export function openBecause(...because: readonly ItemReason[]): OwnProgress {
  return { state: 'open', because, lastAt: null };
}

export function blockedBecause(at: string, because: ItemReason): OwnProgress {
  return { state: 'blocked', because: [because], lastAt: at };
}

export function answeredAt(at: string): OwnProgress {
  return { state: 'answered', because: [], lastAt: at };
}

/** "Not possible, because …": a reason without a value. It counts only where the sheet allows it, and never for a signature. */
export function notPossible(item: StepItem, context: ItemContext): OwnProgress | null {
  const answer = context.byItem.answer(item.key);
  if (answer === undefined || answer.value !== null) return null;
  const reason = answer.reason?.trim() ?? '';
  if (reason === '') return null;
  if (!item.mayBeNotPossible || item.kind === 'sign-off') {
    return openBecause({ code: 'may-not-be-left-out', reason });
  }
  return { state: 'not-possible', because: [], lastAt: answer.at };
}
