/** Which rows and boxes a series shows, and where Enter goes from one of them. */
import type { ItemOf, ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import type { RecordedReading, RunRecord } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';

export type SeriesRow = {
  readonly sample: number;
  /** Of the first reading of the row; null: nothing read yet. */
  readonly startedAt: string | null;
};

export type SeriesBox = { readonly sample: number; readonly quantity: QuantityKey };

export function seriesQuantities(item: ItemOf<'series'>): readonly QuantityKey[] {
  return [...item.quantities, ...item.optional];
}

/** As many rows as the sheet asks for, all that were read, and one more once asked for. */
export function seriesRows(
  item: ItemOf<'series'>,
  record: Pick<RunRecord, 'readings'>,
  sheet: Pick<ModelSheet, 'steady'>,
  extra: number,
  /** What was read before then is what it was before an adjustment: as many rows are read again. */
  since: string | null = null,
): readonly SeriesRow[] {
  const live = record.readings.filter((one) => one.itemKey === item.key && one.supersededById === null);
  const last = Math.max(0, ...live.map((one) => one.sample));
  const before = since === null ? [] : live.filter((one) => one.measuredAt < since);
  const lastBefore = Math.max(0, ...before.map((one) => one.sample));
  const count = Math.max(lastBefore + sheet.steady.minSamples, last) + extra;
  return Array.from({ length: count }, (_, index) => {
    const ofRow = live.filter((one) => one.sample === index + 1);
    return { sample: index + 1, startedAt: earliest(ofRow) };
  });
}

/** The first box nobody has filled, in the order they are read; null: all are. */
export function firstEmptyBox(
  item: ItemOf<'series'>,
  record: Pick<RunRecord, 'readings'>,
  rows: readonly SeriesRow[],
): SeriesBox | null {
  for (const { sample } of rows) {
    for (const quantity of item.quantities) {
      const isRead = record.readings.some(
        (one) =>
          one.itemKey === item.key && one.supersededById === null && one.quantity === quantity && one.sample === sample,
      );
      if (!isRead) return { sample, quantity };
    }
  }
  return null;
}

/** The next box in reading order; null after the last one. */
export function boxAfter(item: ItemOf<'series'>, rows: readonly SeriesRow[], from: SeriesBox): SeriesBox | null {
  const quantities = seriesQuantities(item);
  const boxes = rows.flatMap(({ sample }) => quantities.map((quantity) => ({ sample, quantity })));
  const position = boxes.findIndex((box) => box.sample === from.sample && box.quantity === from.quantity);
  return boxes[position + 1] ?? null;
}

function earliest(readings: readonly RecordedReading[]): string | null {
  return readings.map((one) => one.measuredAt).sort()[0] ?? null;
}
