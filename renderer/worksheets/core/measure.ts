/** How a number on a worksheet is typed and shown: its units, the one the US trade reads, and how fine it is shown. */
import { type EntryUnit, entryUnits } from '../../../domain/quantity/entryUnits.ts';
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import { preferredUnit, type UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { type Dimension, type QuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';

export type Measure = {
  /** null: a kind of number that no reading has. */
  readonly dimension: Dimension | null;
  /** The own unit, in which the domain computes, first. */
  readonly units: readonly [EntryUnit, ...EntryUnit[]];
  /** Symbol of the unit the US trade reads, where it is another than the first. */
  readonly us?: string;
  /** Shown in the own unit; absent: three figures. */
  readonly decimals?: number;
};

export type ShownNumber = { readonly text: string; readonly unit: string };

export function unitOf(measure: Measure, unitSystem: UnitSystem): EntryUnit {
  const own = measure.units[0];
  if (unitSystem === 'metric') return own;
  return measure.units.find(({ symbol }) => symbol === measure.us) ?? own;
}

export function showNumber(measure: Measure, valueOwn: number, unitSystem: UnitSystem): ShownNumber {
  return showIn(measure, valueOwn, unitOf(measure, unitSystem));
}

export function showIn(measure: Measure, valueOwn: number, unit: EntryUnit): ShownNumber {
  const value = unit.fromOwn(valueOwn);
  if (!Number.isFinite(value)) throw new Error(`a worksheet has worked out ${valueOwn}`);
  return { text: formatNumber(value, decimalsIn(measure, value, unit)), unit: unit.symbol };
}

export function measureOf(quantity: QuantityKey): Measure {
  return {
    dimension: quantitySpec(quantity).dimension,
    units: entryUnits(quantity),
    us: preferredUnit(quantity, 'us').symbol,
    decimals: quantitySpec(quantity).decimals,
  };
}

/** As many as keep the resolution of the own unit; without one, three figures: what the instruments behind it are good for. */
function decimalsIn({ decimals }: Measure, value: number, unit: EntryUnit): number {
  if (decimals !== undefined) {
    const perOwn = unit.fromOwn(1) - unit.fromOwn(0);
    return Math.max(0, decimals - Math.round(Math.log10(perOwn)));
  }
  const size = Math.abs(value);
  if (size === 0 || size >= 100) return 0;
  return Math.min(MOST_DECIMALS, 2 - Math.floor(Math.log10(size)));
}

const MOST_DECIMALS = 6;
