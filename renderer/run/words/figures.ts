/** A computed number to three figures: what the instruments behind it are good for. */
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';

export function figures(value: number): string {
  const size = Math.abs(value);
  const decimals = size === 0 || size >= 100 ? 0 : Math.min(4, Math.max(0, 2 - Math.floor(Math.log10(size))));
  return formatNumber(value, decimals);
}
