/** The unit of what was worked out, and whether it is only a lower bound. */
import { entryUnits } from '../quantity/entryUnits.ts';
import { isQuantityKey } from '../quantity/quantities.ts';

/** The difference of two readings may come without a unit: it is that of its quantity, with kelvin for degrees. */
export function resultUnit(subject: string, unit: string): string {
  const quantity = /^relation:([^@]*)/u.exec(subject)?.[1] ?? '';
  if (unit !== '' || !isQuantityKey(quantity)) return unit;
  const { symbol } = entryUnits(quantity)[0];
  return symbol === '°C' ? 'K' : symbol;
}

/** What stands before it. From an analyser over its range CO is at least that much, and so is all that is worked out from it. */
export function lowerBoundMark(inputs: Readonly<Record<string, number | string>>): '> ' | '' {
  const isAtLeast = Object.entries(inputs).some(
    ([name, value]) => name.startsWith('coPpm') && typeof value === 'string' && value.startsWith('>'),
  );
  return isAtLeast ? '> ' : '';
}
