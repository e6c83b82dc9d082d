/** What must be asked again because it has grown too old by the time a run is taken up again. */
import type { LapseKind, ModelSheet } from './modelSheet.ts';
import { hasLapsed, lapseOf } from './progress/lapse.ts';
import { ownProgress } from './progress/ownProgress.ts';
import { recordByItem } from './progress/recordByItem.ts';
import type { ItemAddress, StepList } from './progressTypes.ts';
import type { RunRecord } from './runRecord.ts';
import { stepListOf, stepsOfList } from './stepListOf.ts';

export type LapsedItem = ItemAddress & {
  readonly lapse: LapseKind;
  readonly hours: number;
  readonly lastAt: string;
};

export function lapsedItems(input: {
  readonly sheet: ModelSheet;
  readonly record: RunRecord;
  readonly reopenedAt: string;
  /** By default the list of the run's kind. */
  readonly steps?: StepList;
}): readonly LapsedItem[] {
  const { sheet, record, reopenedAt } = input;
  const steps = input.steps ?? stepListOf(record.kind, sheet);
  const byItem = recordByItem(record);
  const progressInput = { sheet, steps, record, findings: [], now: reopenedAt };
  return stepsOfList(sheet, steps).flatMap((step) =>
    step.items.flatMap((item) => {
      const lapse = lapseOf(item, sheet);
      if (lapse === null) return [];
      const { lastAt } = ownProgress(item, { input: progressInput, byItem, step });
      if (lastAt === null || !hasLapsed(lapse, lastAt, reopenedAt)) return [];
      return [{ stepKey: step.key, itemKey: item.key, ...lapse, lastAt }];
    }),
  );
}
