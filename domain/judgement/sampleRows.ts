/**
 * What was read together: the quantities of one sample at one point. A series is one item with several quantities; a
 * sheet that asks for them one by one has them in one step instead.
 */
import type { QuantityKey } from '../quantity/quantities.ts';
import type { Measured } from './measured.ts';
import { FLUE_GAS } from './quantityGroups.ts';

export type SampleRow = {
  /** Series item, or step where every quantity is an item of its own. */
  readonly group: string;
  readonly point: string | null;
  readonly sample: number;
  /** When its last quantity was read; null: unknown. */
  readonly atMs: number | null;
  readonly readings: readonly Measured[];
  readonly get: (quantity: QuantityKey) => Measured | undefined;
  /**
   * The same, or else the newest read at this point on its own: temperatures of water and air that a sheet asks for once
   * beside its series. Never for the flue gas itself, whose numbers belong to one sample.
   */
  readonly near: (quantity: QuantityKey) => Measured | undefined;
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
  const newest = new Map(measured.map((one) => [`${one.quantity}|${one.point}`, one]));
  return [...byRow.values()].map(({ group, list }) => toRow(group, list, newest)).sort(byTimeThenSample);
}

function toRow(
  group: string,
  list: ReadonlyMap<QuantityKey, Measured>,
  newest: ReadonlyMap<string, Measured>,
): SampleRow {
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
    near: (quantity) =>
      list.get(quantity) ?? (FLUE_GAS.has(quantity) ? undefined : newest.get(`${quantity}|${first?.point ?? null}`)),
  };
}

function byTimeThenSample(one: SampleRow, other: SampleRow): number {
  const byTime = (one.atMs ?? 0) - (other.atMs ?? 0);
  if (byTime !== 0) return byTime;
  const byGroup = one.group < other.group ? -1 : one.group > other.group ? 1 : 0;
  return byGroup || one.sample - other.sample;
}

/** Two readings of one row, or one of the row and the other read beside it; undefined: the row holds neither. */
export function pairOf(
  row: SampleRow,
  quantity: QuantityKey,
  other: QuantityKey,
): readonly [Measured, Measured] | undefined {
  if (row.get(quantity) === undefined && row.get(other) === undefined) return undefined;
  const [one, another] = [row.near(quantity), row.near(other)];
  return one && another ? [one, another] : undefined;
}
