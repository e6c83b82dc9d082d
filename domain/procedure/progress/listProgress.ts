/** Items answered by a list: parts that were changed, lockouts there have been. "None" is an answer; an empty list is not. */
import type { ItemOf } from '../modelSheet.ts';
import { newest } from './instants.ts';
import { answeredAt, type ItemContext, notPossible, type OwnProgress, openBecause } from './itemContext.ts';

/** The answer that says there is nothing to list. */
export const NONE_ANSWER = 'none';
/** The mark that a line of the list was copied from paper; which one is its reason. By itself it answers nothing. */
export const COPIED_ANSWER = 'from-paper';

export function listProgress(item: ItemOf<'parts' | 'lockouts'>, context: ItemContext): OwnProgress {
  const { record } = context.byItem;
  const rows: readonly { readonly itemKey: string; readonly at: string }[] =
    (item.kind === 'parts' ? record.parts : record.lockouts) ?? [];
  const last = newest(
    rows.filter((row) => row.itemKey === item.key),
    (row) => row.at,
  );
  if (last !== undefined) return answeredAt(last.at);
  const answer = context.byItem.answer(item.key);
  if (answer?.value === NONE_ANSWER) return answeredAt(answer.at);
  return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
}
