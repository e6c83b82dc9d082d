/** The unit a person of one unit system reads a quantity in. Switching it never changes what is stored. */
import { type EntryUnit, entryUnits } from './entryUnits.ts';
import { type Dimension, type QuantityKey, quantitySpec } from './quantities.ts';
import { findUnit } from './unitText.ts';

export type UnitSystem = 'metric' | 'us';

/** Where the US trade reads another unit than the quantity's own. */
const US_UNITS: Partial<Record<Dimension, string>> = {
  temperature: '°F',
  'temperature-difference': '°F',
  'gas-pressure': 'in w.c.',
  'system-pressure': 'psi',
  power: 'Btu/h',
  flow: 'US gpm',
  length: 'ft',
  volume: 'US gal',
  'gas-volume': 'ft³',
  'heating-value': 'Btu/ft³',
  hardness: 'gpg',
};

export function preferredUnit(key: QuantityKey, unitSystem: UnitSystem): EntryUnit {
  const own = entryUnits(key)[0];
  if (unitSystem === 'metric') return own;
  const wanted = US_UNITS[quantitySpec(key).dimension];
  if (wanted === undefined) return own;
  // A quantity with units of its own (a gas rate in ft³/h) has its US unit second.
  return findUnit(key, wanted) ?? entryUnits(key)[1] ?? own;
}
