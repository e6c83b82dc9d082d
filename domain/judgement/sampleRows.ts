/**
 * What was read together: the quantities of one sample at one point. A series is one item with several quantities; a
 * sheet that asks for them one by one has them in one step instead.
 */
import type { QuantityKey } from '../quantity/quantities.ts';
import type { Measured } from './measured.ts';

export type SampleRow = {
  /** Series item, or step where every quantity is an item of its own. */
  readonly group: string;
  readonly point: string | null;
  readonly sample: number;
  /** When its last quantity was read; null: unknown. */
  readonly atMs: number | null;
  readonly readings: readonly Measured[];
  readonly get: (quantity: QuantityKey) => Measured | undefined;
};

/** `measured` oldest first; so are the rows. Of one quantity read twice in a row the later counts. */
export function sampleRows(measured: readonly Measured[]): readonly SampleRow[] {
  const quantitiesByItem = new Map<string, Set<QuantityKey>>();
  for (const { reading, quantity } of measured) {
    const quantities = quantitiesByItem.get(reading.itemKey);
    if (quantities) quantities.add(quantity);
    else quantitiesByItem.set(reading.itemKey, new Set([quantity]));
  }
  const byRow = new Map<string, { group: string; list: Map<QuantityKey, Measured> }>();
  for (const one of measured) {
    const { itemKey, stepKey, sample } = one.reading;
    const group = (quantitiesByItem.get(itemKey)?.size ?? 0) > 1 ? `item:${itemKey}` : `step:${stepKey}`;
    const rowKey = `${group}|${one.point ?? ''}|${sample}`;
    const row = byRow.get(rowKey);
    if (row) row.list.set(one.quantity, one);
    else byRow.set(rowKey, { group, list: new Map([[one.quantity, one]]) });
  }
  return [...byRow.values()].map(({ group, list }) => toRow(group, list)).sort(byTimeThenSample);
}

function toRow(group: string, list: ReadonlyMap<QuantityKey, Measured>): SampleRow {
  const readings = [...list.values()];
  const [first] = readings;
  const instants = readings.flatMap((one) => (one.atMs === null ? [] : [one.atMs]));
  return {
    group,
    point: first?.point ?? null,
    sample: first?.reading.sample ?? 0,
    atMs: instants.length === 0 ? null : Math.max(...instants),
    readings,
    get: (quantity) => list.get(quantity),
  };
}

function byTimeThenSample(one: SampleRow, other: SampleRow): number {
  const byTime = (one.atMs ?? 0) - (other.atMs ?? 0);
  if (byTime !== 0) return byTime;
  const byGroup = one.group < other.group ? -1 : one.group > other.group ? 1 : 0;
  return byGroup || one.sample - other.sample;
}
