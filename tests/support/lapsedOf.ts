/** What a run asks again because it has grown too old by the time it was taken up again, as its progress says it. */
import type { LapseKind, ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { runProgress } from '../../domain/procedure/progress.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { stepListOf } from '../../domain/procedure/stepListOf.ts';

export type Lapsed = {
  readonly stepKey: string;
  readonly itemKey: string;
  readonly lapse: LapseKind;
  readonly hours: number;
  readonly lastAt: string;
};

export function lapsedOf(input: {
  readonly sheet: ModelSheet;
  readonly record: RunRecord;
  readonly reopenedAt: string;
}): readonly Lapsed[] {
  const { sheet, record, reopenedAt } = input;
  const steps = stepListOf(record.kind, sheet);
  const progress = runProgress({ sheet, steps, record, findings: [], reopenedAt, now: reopenedAt });
  return progress.steps.flatMap(({ items }) =>
    items.flatMap(({ stepKey, itemKey, because }) =>
      because.flatMap((reason) =>
        reason.code === 'lapsed'
          ? [{ stepKey, itemKey, lapse: reason.lapse, hours: reason.hours, lastAt: reason.lastAt }]
          : [],
      ),
    ),
  );
}
