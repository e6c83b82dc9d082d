/** The parts changed on a run, as far as its sheet says what they want done afterwards. */
import type { ModelSheet, SheetPart } from './modelSheet.ts';
import type { RunRecord } from './runRecord.ts';

export type PartNeed = 'needs-tuning' | 'new-baseline';

export function changedParts(
  record: Pick<RunRecord, 'parts'>,
  sheet: Pick<ModelSheet, 'parts'>,
  need: PartNeed,
): readonly { readonly part: SheetPart; readonly at: string }[] {
  return (record.parts ?? []).flatMap(({ partKey, at }) => {
    const part = sheet.parts?.find((one) => one.key === partKey);
    return part !== undefined && needs(part, need) ? [{ part, at }] : [];
  });
}

function needs(part: SheetPart, need: PartNeed): boolean {
  return need === 'needs-tuning' ? part.needsTuning : part.newBaseline;
}
