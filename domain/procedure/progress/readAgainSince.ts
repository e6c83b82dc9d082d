/**
 * Since when what is read at the firing points counts: the last moment at which something was adjusted, or a part was
 * changed after which the burner is tuned anew. What was read before stays on file as what it was before.
 */
import { changedParts } from '../changedParts.ts';
import { newest } from './instants.ts';
import type { ItemContext } from './itemContext.ts';

/** null: nothing was adjusted. */
export function readAgainSince({ input, byItem }: Pick<ItemContext, 'input' | 'byItem'>): string | null {
  const { sheet, steps, record } = input;
  const adjusting = new Map(
    (sheet[steps] ?? [])
      .flatMap((step) => step.items)
      .flatMap((item) =>
        item.kind === 'choose'
          ? [[item.key, item.options.filter((one) => one.readAgain === true).map((one) => one.value)] as const]
          : [],
      ),
  );
  const adjusted = byItem.record.answers.filter(
    ({ itemKey, value }) => value !== null && adjusting.get(itemKey)?.includes(value) === true,
  );
  const moments = [...adjusted, ...changedParts(record, sheet, 'needs-tuning')];
  return newest(moments, (one) => one.at)?.at ?? null;
}
