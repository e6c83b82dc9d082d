/** What a suggestion would make of a reading: `CO₂ 9.0 %`. */
import type { Suggestion } from '../../../domain/judgement/finding.ts';
import { formatQuantity } from '../../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { quantitySpec } from '../../../domain/quantity/quantities.ts';

export function changeWords(change: Suggestion['changes'][number], unitSystem: UnitSystem): string {
  const { text, unit } = formatQuantity(change.quantity, change.toOwn, unitSystem);
  return `${quantitySpec(change.quantity).label} ${text}${unit === '' ? '' : ` ${unit}`}`;
}
