/** A sheet's limit in the reader's units: `30–47 °C`, `at most 100 ppm`. */
import type { SheetLimit } from '../../domain/procedure/modelSheet.ts';
import { formatQuantity } from '../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';

export function limitText(
  { quantity, min, max }: Pick<SheetLimit, 'quantity' | 'min' | 'max'>,
  unitSystem: UnitSystem,
): string {
  const low = min === undefined ? null : formatQuantity(quantity, min, unitSystem);
  const high = max === undefined ? null : formatQuantity(quantity, max, unitSystem);
  if (low !== null && high !== null) {
    return low.text === high.text
      ? `${low.text} ${low.unit}`.trim()
      : `${low.text} to ${high.text} ${high.unit}`.trim();
  }
  if (high !== null) return `at most ${high.text} ${high.unit}`.trim();
  return low === null ? '' : `at least ${low.text} ${low.unit}`.trim();
}
