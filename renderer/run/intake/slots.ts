/** The places of a run that a row of an instrument's file may go to: a sample of a series, or a single reading. */
import type { SheetStep } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress, RunProgress } from '../../../domain/procedure/progressTypes.ts';
import type { RecordedReading, RunRecord } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { seriesQuantities, seriesRows } from '../items/seriesPlan.ts';

export type Slot = ItemAddress & {
  readonly key: string;
  readonly label: string;
  readonly sample: number;
  readonly quantities: readonly QuantityKey[];
  /** What stands there now and would be replaced. */
  readonly standing: readonly RecordedReading[];
};

/** `spare`: as many samples beyond those a series has as the file has rows. */
export function slotsOf(
  steps: readonly SheetStep[],
  progress: RunProgress,
  record: RunRecord,
  sheet: Parameters<typeof seriesRows>[2],
  spare: number,
): readonly Slot[] {
  return progress.steps.flatMap((step) => {
    if (step.lockedBecause.length > 0) return [];
    const asked = steps.find((one) => one.key === step.stepKey);
    return step.items.flatMap(({ stepKey, itemKey }): Slot[] => {
      const item = asked?.items.find((one) => one.key === itemKey);
      if (item?.kind === 'read') return [slotAt(item.label, 1, [item.quantity])];
      if (item?.kind !== 'series') return [];
      return seriesRows(item, record, sheet, spare).map(({ sample }) =>
        slotAt(`${item.label}, sample ${sample}`, sample, seriesQuantities(item)),
      );

      function slotAt(label: string, sample: number, quantities: readonly QuantityKey[]): Slot {
        const standing = record.readings.filter(
          (one) => one.itemKey === itemKey && one.sample === sample && one.supersededById === null,
        );
        return { stepKey, itemKey, key: `${itemKey} ${sample}`, label, sample, quantities, standing };
      }
    });
  });
}

/** Row by row into the free samples of the series that is open, or the last row into the single reading that is open. */
export function proposedSlots(
  rows: readonly { readonly values: readonly { readonly quantity: QuantityKey }[] }[],
  slots: readonly Slot[],
  active: ItemAddress | null,
): readonly (string | null)[] {
  const free = slots.filter((slot) => slot.itemKey === active?.itemKey && slot.standing.length === 0);
  const takers = rows.map(({ values }) =>
    values.some(({ quantity }) => free[0]?.quantities.includes(quantity) === true),
  );
  const takes = takers.filter(Boolean).length;
  // Of a long log the newest rows are the ones read when steady.
  let skip = Math.max(0, takes - Math.min(free.length, takes));
  let next = 0;
  return takers.map((isTaker) => {
    if (!isTaker) return null;
    if (skip > 0) {
      skip -= 1;
      return null;
    }
    const slot = free[next];
    next += 1;
    return slot?.key ?? null;
  });
}
