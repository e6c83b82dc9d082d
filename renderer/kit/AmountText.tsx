/** A stored value of a dimension (a length, a power) in the reader's units; for readings see QuantityText. */
import { ENTRY_UNITS } from '../../domain/quantity/entryUnits.ts';
import { formatNumber } from '../../domain/quantity/formatQuantity.ts';
import type { Dimension } from '../../domain/quantity/quantities.ts';
import { usualUnit } from '../form/typedAmount.ts';
import { useUnitSystem } from '../operations/AppStatus.tsx';

export function AmountText({
  dimension,
  own,
  decimals,
}: {
  readonly dimension: Dimension;
  /** In the dimension's first unit; null is "not known", never zero. */
  readonly own: number | null;
  /** In that same unit; others get as many as keep the resolution. */
  readonly decimals: number;
}) {
  const unitSystem = useUnitSystem();
  if (own === null) return <span className="lo-faint">not known</span>;
  const symbol = usualUnit(dimension, unitSystem);
  const unit = ENTRY_UNITS[dimension].find((one) => one.symbol === symbol) ?? ENTRY_UNITS[dimension][0];
  const perOwn = unit.fromOwn(1) - unit.fromOwn(0);
  const text = formatNumber(unit.fromOwn(own), Math.max(0, decimals - Math.round(Math.log10(perOwn))));
  return (
    <span style={{ whiteSpace: 'nowrap' }}>
      {text}
      <span className="lo-unit">{unit.symbol}</span>
    </span>
  );
}
