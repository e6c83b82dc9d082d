/** A stored value in the reader's units: the number first, its unit beside it, fainter. */
import { formatQuantity } from '../../domain/quantity/formatQuantity.ts';
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import { useUnitSystem } from '../operations/AppStatus.tsx';

export function QuantityText({
  quantity,
  value,
}: {
  readonly quantity: QuantityKey;
  /** In the quantity's own unit; null is "not known", never zero. */
  readonly value: number | null;
}) {
  const unitSystem = useUnitSystem();
  if (value === null) return <span className="lo-faint">not known</span>;
  const { text, unit } = formatQuantity(quantity, value, unitSystem);
  return (
    <span style={{ whiteSpace: 'nowrap' }}>
      {text}
      {unit === '' ? null : <span className="lo-unit">{unit}</span>}
    </span>
  );
}
