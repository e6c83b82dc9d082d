/** A limit as it stands beside a box, in the unit the person reads in: `8.5 to 9.7 %`, `at most 200 ppm`. */
import type { EntryUnit } from '../../../domain/quantity/entryUnits.ts';
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import { type QuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';

type Bounds = { readonly min?: number | null | undefined; readonly max?: number | null | undefined };

export function limitWords(quantity: QuantityKey, bounds: Bounds, unit: EntryUnit): string {
  const min = bounds.min ?? null;
  const max = bounds.max ?? null;
  const unitText = unit.symbol === '' ? '' : ` ${unit.symbol}`;
  if (min !== null && max !== null) {
    return min === max
      ? `exactly ${boundText(quantity, min, unit, 'min')}${unitText}`
      : `${boundText(quantity, min, unit, 'min')} to ${boundText(quantity, max, unit, 'max')}${unitText}`;
  }
  if (min !== null) return `at least ${boundText(quantity, min, unit, 'min')}${unitText}`;
  if (max !== null) return `at most ${boundText(quantity, max, unit, 'max')}${unitText}`;
  return 'no limit';
}

/** When a limit means make safe: `above 120 ppm`, `below 0.5 bar`, `outside 4 to 14 mbar`. */
export function stopWords(quantity: QuantityKey, bounds: Bounds, unit: EntryUnit): string {
  const words = limitWords(quantity, bounds, unit);
  if (words.startsWith('at most ')) return words.replace('at most', 'above');
  return words.startsWith('at least ') ? words.replace('at least', 'below') : `outside ${words}`;
}

/** A bound written with six figures, 9.96356 mbar, is still the 4 in w.c. it was written for. */
const WRITING_SHARE = 1e-6;

/**
 * Never fewer decimals than the bound has itself: a limit of 0.25 must not read as 0.3. What a converted bound is rounded to
 * lies within: whoever reads just that number must not be told that it is outside.
 */
function boundText(quantity: QuantityKey, own: number, unit: EntryUnit, end: 'min' | 'max'): string {
  const shown = Number(unit.fromOwn(own).toPrecision(12));
  const unitsPerOwn = unit.fromOwn(1) - unit.fromOwn(0);
  const usual = Math.max(0, quantitySpec(quantity).decimals - Math.round(Math.log10(unitsPerOwn)));
  // A converted bound (12.04 psi for 0.83 bar) has endless decimals: no more than are usual. One of the sheet's own may
  // have one more. Empty ones are left out.
  const decimals = shown === own ? usual + 1 : usual;
  const rounded = Number(shown.toFixed(decimals));
  const back = unit.toOwn(rounded);
  const slack = Math.abs(own) * WRITING_SHARE;
  const isOutside = end === 'min' ? back < own - slack : back > own + slack;
  const inward = isOutside ? Number((rounded + (end === 'min' ? 1 : -1) * 10 ** -decimals).toFixed(decimals)) : rounded;
  return formatNumber(inward, decimalsOf(inward));
}

function decimalsOf(value: number): number {
  return /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0;
}
