/** The items of a list of steps that this run asks for, and whether the answer they hang on is still missing. */
import type { Finding } from '../../judgement/finding.ts';
import { isOtherFuelThanPlate } from '../conversion.ts';
import type { ModelSheet, SheetStep, StepItem } from '../modelSheet.ts';
import { type Asked, isAsked } from './isAsked.ts';
import type { RecordByItem } from './recordByItem.ts';

export type AskedItem = { readonly item: StepItem; readonly waitsForAnswerOf: string | null };
export type AskedStep = { readonly step: SheetStep; readonly items: readonly AskedItem[] };

export function askedItems(
  steps: readonly SheetStep[],
  byItem: RecordByItem,
  sheet: Pick<ModelSheet, 'parts'>,
  findings: readonly Finding[] = [],
): readonly AskedStep[] {
  const isOtherFuel = isOtherFuelThanPlate(steps, byItem);
  const askedByKey = new Map<string, Asked>();
  return steps.map((step) => ({
    step,
    items: step.items.flatMap((item) => {
      const hangsOn = item.onlyFor?.answer?.item ?? item.onlyFor?.foundOutside ?? null;
      const hangsOnAsked = hangsOn === null || askedByKey.get(hangsOn) !== 'no';
      const asked = isAsked(item, byItem, sheet, hangsOnAsked, isOtherFuel, findings);
      askedByKey.set(item.key, asked);
      return asked === 'no' ? [] : [{ item, waitsForAnswerOf: asked === 'unknown' ? hangsOn : null }];
    }),
  }));
}
