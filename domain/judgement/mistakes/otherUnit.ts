/** What a typed number would be if it had been meant in another unit of its quantity. */
import { type EntryUnit, entryUnits } from '../../quantity/entryUnits.ts';
import { findUnit } from '../../quantity/unitText.ts';
import type { Measured } from '../measured.ts';

export type OtherMeaning = { readonly unit: string; readonly valueOwn: number };

/** undefined: the stored unit is none of the quantity's. */
export function typedNumber(one: Measured): { readonly value: number; readonly unit: EntryUnit } | undefined {
  const unit = findUnit(one.quantity, one.reading.typedUnit);
  return unit === undefined ? undefined : { value: unit.fromOwn(one.value), unit };
}

export function otherMeanings(one: Measured): readonly OtherMeaning[] {
  const typed = typedNumber(one);
  if (typed === undefined) return [];
  return entryUnits(one.quantity)
    .filter(({ symbol }) => symbol !== typed.unit.symbol)
    .map((unit) => ({ unit: unit.symbol, valueOwn: unit.toOwn(typed.value) }));
}
