/** A stored value as a person reads it: the number as text and its unit apart, so that columns align and units stay put. */
import { preferredUnit, type UnitSystem } from './preferredUnit.ts';
import { type QuantityKey, quantitySpec } from './quantities.ts';

export type FormattedQuantity = { readonly text: string; readonly unit: string };

/** Half a last place is all that is lost: `parseTyped` reads every text this gives back to the same number. */
export function formatQuantity(
  key: QuantityKey,
  valueOwn: number,
  unitSystem: UnitSystem,
  locale = 'en',
): FormattedQuantity {
  if (!Number.isFinite(valueOwn)) throw new Error(`${key} is not a finite number: ${valueOwn}`);
  const unit = preferredUnit(key, unitSystem);
  const shown = unit.fromOwn(valueOwn);
  return { text: formatNumber(shown, shownDecimals(key, unitSystem), locale), unit: unit.symbol };
}

/** As many decimals as keep the resolution of the own unit, to the nearest power of ten. */
export function shownDecimals(key: QuantityKey, unitSystem: UnitSystem): number {
  const { decimals } = quantitySpec(key);
  const unit = preferredUnit(key, unitSystem);
  const shownPerOwn = unit.fromOwn(1) - unit.fromOwn(0);
  return Math.max(0, decimals - Math.round(Math.log10(shownPerOwn)));
}

/** Thousands are set apart by a narrow space, never by a mark that somewhere else is the decimal. */
export function formatNumber(value: number, decimals: number, locale = 'en'): string {
  const fixed = Math.abs(value).toFixed(decimals);
  const [whole = '0', fraction] = fixed.split('.');
  const isNegative = value < 0 && Number(fixed) !== 0;
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u202f') : whole;
  return `${isNegative ? '\u2212' : ''}${grouped}${fraction === undefined ? '' : decimalMark(locale) + fraction}`;
}

function decimalMark(locale: string): string {
  const known = decimalMarks.get(locale);
  if (known !== undefined) return known;
  const parts = new Intl.NumberFormat(locale).formatToParts(1.1);
  const mark = parts.find((part) => part.type === 'decimal')?.value === ',' ? ',' : '.';
  decimalMarks.set(locale, mark);
  return mark;
}

/** Making a number formatter costs more than using one; only its mark is needed. */
const decimalMarks = new Map<string, string>();
