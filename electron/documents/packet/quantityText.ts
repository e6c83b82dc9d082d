/** Values and limits of a record as a packet prints them: the number and its unit apart, in one unit system or both. */
import { ENTRY_UNITS } from '../../../domain/quantity/entryUnits.ts';
import {
  type FormattedQuantity,
  formatNumber,
  formatQuantity,
  shownDecimals,
} from '../../../domain/quantity/formatQuantity.ts';
import { preferredUnit, type UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { isQuantityKey, type QuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';
import { fromDecimalText } from '../../sealing/decimalText.ts';

export function quantityLabel(quantity: string): string {
  return isQuantityKey(quantity) ? quantitySpec(quantity).label : asWords(quantity);
}

/** A quantity that has left the catalogue is printed as it was sealed; its name holds its unit. */
export function valueText(quantity: string, valueOwn: string, unitSystem: UnitSystem): FormattedQuantity {
  if (!isQuantityKey(quantity)) return { text: valueOwn, unit: '' };
  return formatQuantity(quantity, fromDecimalText(valueOwn), unitSystem);
}

/** True when the two unit systems write this quantity in different units. */
export function hasOtherUnit(quantity: string): boolean {
  return isQuantityKey(quantity) && preferredUnit(quantity, 'us').symbol !== preferredUnit(quantity, 'metric').symbol;
}

/** `3.9 to 6.0 %`, `at most 100 ppm`, `at least 5`. */
export function limitText(
  limit: { readonly quantity: string; readonly min: string | null; readonly max: string | null },
  unitSystem: UnitSystem,
): string {
  const min = limit.min === null ? null : boundText(limit.quantity, limit.min, unitSystem);
  const max = limit.max === null ? null : boundText(limit.quantity, limit.max, unitSystem);
  if (min && max) return `${min.text} to ${withUnit(max)}`;
  if (max) return `at most ${withUnit(max)}`;
  return min ? `at least ${withUnit(min)}` : 'none';
}

/** A limit is never rounded to look tighter or wider than it is: it gets the decimals it needs, at most one more than usual. */
function boundText(quantity: string, bound: string, unitSystem: UnitSystem): FormattedQuantity {
  if (!isQuantityKey(quantity)) return { text: bound, unit: '' };
  const unit = preferredUnit(quantity, unitSystem);
  const shown = unit.fromOwn(fromDecimalText(bound));
  const usual = shownDecimals(quantity, unitSystem);
  const decimals = isSame(shown, usual) ? usual : usual + 1;
  return { text: formatNumber(shown, decimals), unit: unit.symbol };
}

function isSame(value: number, decimals: number): boolean {
  return Math.abs(Number(value.toFixed(decimals)) - value) <= 1e-9 * Math.max(1, Math.abs(value));
}

export function withUnit({ text, unit }: FormattedQuantity): string {
  return unit === '' ? text : `${text}\u00a0${unit}`;
}

/** A computed number carries its unit as a symbol: the other system's one is found through what both belong to. */
export function computedText(
  value: string,
  unit: string,
  decimals: number,
  unitSystem: UnitSystem,
): FormattedQuantity | null {
  const number = fromDecimalText(value);
  if (unitSystem === 'metric') return { text: formatNumber(number, decimals), unit };
  const other = usUnitFor(unit);
  return other ? { text: meaningfulText(other.fromOwn(number), decimals, sizeOf(other)), unit: other.symbol } : null;
}

/** A width of an interval scales like a difference: °C of spread do not gain the 32. */
export function spreadText(plusMinus: string, unit: string, decimals: number, unitSystem: UnitSystem): string {
  const other = unitSystem === 'metric' ? null : usUnitFor(unit);
  const perUnit = other ? sizeOf(other) : 1;
  return meaningfulText(fromDecimalText(plusMinus) * perUnit, decimals, perUnit);
}

function sizeOf(unit: { readonly fromOwn: (own: number) => number }): number {
  return Math.abs(unit.fromOwn(1) - unit.fromOwn(0));
}

/** A tenth of a kilowatt is some 340 Btu/h: digits below that would only look exact. */
function meaningfulText(value: number, decimalsBefore: number, perUnit: number): string {
  const decimals = decimalsBefore - Math.floor(Math.log10(perUnit));
  const step = 10 ** -decimals;
  return formatNumber(decimals < 0 ? Math.round(value / step) * step : value, Math.max(0, decimals));
}

function usUnitFor(symbol: string) {
  const representative = Object.entries(REPRESENTATIVES).find(
    ([dimension]) => ENTRY_UNITS[dimension as keyof typeof REPRESENTATIVES][0].symbol === symbol,
  )?.[1];
  if (representative === undefined) return null;
  const unit = preferredUnit(representative, 'us');
  return unit.symbol === symbol ? null : unit;
}

/** One quantity of each kind whose unit the two systems write differently. */
const REPRESENTATIVES = {
  temperature: 'supplyC',
  'temperature-difference': 'deltaTK',
  'gas-pressure': 'inletPressureMbarG',
  'system-pressure': 'systemPressureBarG',
  power: 'ratedInputKw',
  flow: 'systemFlowLPerMin',
  length: 'altitudeM',
  volume: 'systemVolumeL',
  'heating-value': 'heatingValueMjPerM3',
  hardness: 'hardnessMmolPerL',
} as const satisfies Partial<Record<keyof typeof ENTRY_UNITS, QuantityKey>>;

/** `clocked-input` and `coCo2Ratio` become words. */
export function asWords(key: string): string {
  const words = key
    .replace(/([a-z0-9])([A-Z])/gu, '$1 $2')
    .replaceAll('-', ' ')
    .toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}
