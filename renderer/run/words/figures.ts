/** A computed number to three figures: what the instruments behind it are good for. */
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';

const MOST_DECIMALS = 4;

export function figures(value: number): string {
  return formatNumber(value, decimalsFor(value, 3));
}

/** Neither finer than the other is good for: `55.2 ± 7.6`, `87.7 ± 0.1`. A spread finer than that keeps its first figure. */
export function figuresWithSpread(value: number, plusMinus: number): string {
  const decimals = Math.min(decimalsFor(value, 3), decimalsFor(plusMinus, 2));
  const isGone = Number(plusMinus.toFixed(decimals)) === 0;
  return `${formatNumber(value, decimals)} ± ${formatNumber(plusMinus, isGone ? decimalsFor(plusMinus, 1) : decimals)}`;
}

function decimalsFor(value: number, figureCount: number): number {
  const size = Math.abs(value);
  if (size === 0) return 0;
  return Math.min(MOST_DECIMALS, Math.max(0, figureCount - 1 - Math.floor(Math.log10(size))));
}
