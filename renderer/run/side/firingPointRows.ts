/** The readings of one flue-gas quantity at each firing point of the sheet, with the sheet's band there. */
import type { FuelKey, ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { limitsFor } from '../field/limitsFor.ts';

export type FiringPointRow = {
  readonly firingPoint: string;
  readonly label: string;
  /** null: the sheet leaves that side open. */
  readonly min: number | null;
  readonly max: number | null;
  /** In the order of the samples; the last one counts. */
  readonly samples: readonly { readonly readingId: string; readonly value: number }[];
};

export function firingPointRows(
  sheet: Pick<ModelSheet, 'firingPoints' | 'limits'>,
  record: Pick<RunRecord, 'readings'>,
  fuel: FuelKey,
  quantity: QuantityKey,
): readonly FiringPointRow[] {
  return sheet.firingPoints.map(({ key, label }) => {
    const limits = limitsFor(sheet, fuel, quantity, key);
    const mins = limits.flatMap((limit) => limit.min ?? []);
    const maxs = limits.flatMap((limit) => limit.max ?? []);
    return {
      firingPoint: key,
      label,
      min: mins.length === 0 ? null : Math.max(...mins),
      max: maxs.length === 0 ? null : Math.min(...maxs),
      samples: record.readings
        .filter(
          (one) =>
            one.quantity === quantity && one.point === key && one.supersededById === null && one.comparator === '=',
        )
        .sort((one, other) => one.sample - other.sample)
        .flatMap((one) => (one.valueOwn === null ? [] : [{ readingId: one.readingId, value: one.valueOwn }])),
    };
  });
}

/** The span to draw: every band and value with a little room. null: nothing to draw. */
export function drawnSpan(rows: readonly FiringPointRow[]): readonly [number, number] | null {
  const all = rows.flatMap((row) => [row.min ?? [], row.max ?? [], ...row.samples.map((one) => one.value)].flat());
  if (rows.every((row) => row.samples.length === 0) || all.length === 0) return null;
  const low = Math.min(...all);
  const high = Math.max(...all);
  const room = Math.max(0.5, (high - low) * 0.2);
  return [low - room, high + room];
}
