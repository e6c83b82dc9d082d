/**
 * Since when what is read at the firing points counts: the last moment at which something was adjusted, or a part was
 * changed after which the burner is tuned anew. What was read before stays on file as what it was before.
 */
import { changedParts } from '../changedParts.ts';
import type { ModelSheet } from '../modelSheet.ts';
import type { StepList } from '../progressTypes.ts';
import type { RunRecord } from '../runRecord.ts';
import { stepsOfList } from '../stepListOf.ts';
import { newest } from './instants.ts';

/** null: nothing was adjusted. */
export function readAgainSince(input: {
  readonly record: Pick<RunRecord, 'answers' | 'parts'>;
  readonly sheet: ModelSheet;
  readonly steps: StepList;
}): string | null {
  const { sheet, steps, record } = input;
  const adjusting = new Map(
    stepsOfList(sheet, steps)
      .flatMap((step) => step.items)
      .flatMap((item) =>
        item.kind === 'choose'
          ? [[item.key, item.options.filter((one) => one.readAgain === true).map((one) => one.value)] as const]
          : [],
      ),
  );
  const adjusted = record.answers.filter(
    ({ itemKey, value }) => value !== null && adjusting.get(itemKey)?.includes(value) === true,
  );
  const moments = [...adjusted, ...changedParts(record, sheet, 'needs-tuning')];
  return newest(moments, (one) => one.at)?.at ?? null;
}
