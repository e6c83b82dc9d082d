/** What must be known of a number to read it as typed: its units, its own one first, and what is physically possible. */
import { type EntryUnit, entryUnits } from './entryUnits.ts';
import { type Dimension, type QuantityKey, quantitySpec } from './quantities.ts';

export type AmountKind = {
  /** null: a kind of number that no reading has. */
  readonly dimension: Dimension | null;
  readonly units: readonly [EntryUnit, ...EntryUnit[]];
  /** In the own unit. */
  readonly possible: readonly [min: number, max: number];
};

export function amountKindOf(key: QuantityKey): AmountKind {
  const { dimension, possible } = quantitySpec(key);
  return { dimension, units: entryUnits(key), possible };
}
