/** Why something can't be worked out, in words a person can act on. */
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { isQuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';
import { assertNever, type OutOfRange } from '../../../domain/result.ts';
import type { Fields } from './fields.ts';
import { type Measure, measureOf, unitOf } from './measure.ts';
import * as M from './measures.ts';
import type { Why } from './worked.ts';

/** In place of a result. What is only missing says so; anything else begins with why. */
export function whyWords(whys: readonly Why[], fields: Fields, unitSystem: UnitSystem): string {
  const missing = eachOnce(whys.flatMap((why) => (why.code === 'missing' ? [why.label] : [])));
  const unreadable = eachOnce(whys.flatMap((why) => (why.code === 'unreadable' ? [why.label] : [])));
  const refused = eachOnce(whys.flatMap((why) => refusalWords(why, fields, unitSystem) ?? []));
  return [
    ...(missing.length === 0 ? [] : [`needs ${missing.join(' · ')}`]),
    ...(unreadable.length === 0 ? [] : [`can’t be worked out: ${unreadable.join(' · ')} can’t be read`]),
    ...(refused.length === 0 ? [] : [`can’t be worked out: ${refused.join('; ')}`]),
  ].join('; ');
}

function refusalWords(why: Why, fields: Fields, unitSystem: UnitSystem): string | null {
  switch (why.code) {
    case 'missing':
    case 'unreadable':
      return null;
    case 'said':
      return why.words;
    case 'out-of-range': {
      const field = fieldCalled(fields, why.quantity);
      if (field !== null) return `${field.label} is outside what the formula holds for`;
      const inner = innerNumber(why.quantity);
      return outOfRangeWords(why, inner.label, inner.measure, unitSystem);
    }
    case 'altitude-rule-not-on-sheet':
      return 'above 2000 ft the plate does not hold without a rule: ask the maker';
    case 'altitude-beyond-rule':
      return `the rule says nothing for ${formatNumber(why.elevationFt, 0)} ft: the maker or the authority decides`;
    case 'transitional-flow':
      return `the flow is neither laminar nor turbulent (Reynolds ${formatNumber(why.reynolds, 0)}): no formula holds from 2300 to 4000`;
    default:
      return assertNever(why);
  }
}

/** A whole sentence, to stand by the field or in place of the result. */
export function outOfRangeWords(outside: OutOfRange, label: string, measure: Measure, unitSystem: UnitSystem): string {
  const number = (own: number) => bound(measure, own, unitSystem);
  const { symbol } = unitOf(measure, unitSystem);
  const unit = symbol === '' ? '' : ` ${symbol}`;
  const { validMin: least, validMax: most } = outside;
  const range =
    least !== null && most !== null
      ? `from ${number(least)} to ${number(most)}${unit}`
      : least !== null
        ? `from ${number(least)}${unit} up`
        : most !== null
          ? `up to ${number(most)}${unit}`
          : 'for a number';
  return `${label} is ${number(outside.value)}${unit}: the formula holds ${range}.`;
}

/** Which fields a refused number belongs to. */
export function fieldsOutOfRange(fields: Fields, whys: readonly Why[]): readonly (readonly [string, OutOfRange])[] {
  return whys.flatMap((why) => {
    if (why.code !== 'out-of-range') return [];
    const key = Object.keys(fields).find((one) => isCalled(fields, one, why.quantity));
    return key === undefined ? [] : [[key, why] as const];
  });
}

function fieldCalled(fields: Fields, name: string): { readonly label: string } | null {
  const key = Object.keys(fields).find((one) => isCalled(fields, one, name));
  return key === undefined ? null : (fields[key] ?? null);
}

function isCalled(fields: Fields, key: string, name: string): boolean {
  const field = fields[key];
  return field?.kind === 'number' && (key === name || (field.alsoCalled?.includes(name) ?? false));
}

/** To four figures: a bound is looked at, not computed with. */
function bound(measure: Measure, valueOwn: number, unitSystem: UnitSystem): string {
  const value = Number(unitOf(measure, unitSystem).fromOwn(valueOwn).toPrecision(4));
  if (!Number.isFinite(value)) return 'no number';
  const decimals = Math.min(6, /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0);
  return formatNumber(value, decimals);
}

function innerNumber(name: string): { readonly label: string; readonly measure: Measure } {
  const known = INNER_NUMBERS[name];
  if (known !== undefined) return { label: known[0], measure: known[1] };
  if (isQuantityKey(name)) return { label: quantitySpec(name).label, measure: measureOf(name) };
  return { label: 'A number in between', measure: M.PLAIN };
}

/** Numbers a formula checks that nobody typed: they follow from what was typed. */
const INNER_NUMBERS: Readonly<Record<string, readonly [label: string, measure: Measure]>> = {
  airVapourMolPerMol: ['The moisture of the air', M.PLAIN],
  altitudeMultiplier: ['The factor for the altitude', M.PLAIN],
  atmosphericPressureBarAbs: ['The air pressure', M.SYSTEM_PRESSURE],
  atmosphericPressureKpaAbs: ['The air pressure', M.ABSOLUTE_PRESSURE],
  barometerKpaAbs: ['The air pressure', M.ABSOLUTE_PRESSURE],
  pressureKpaAbs: ['The air pressure', M.ABSOLUTE_PRESSURE],
  coToCo2Ratio: ['CO/CO₂', M.PLAIN],
  coldC: ['The cold water', M.TEMPERATURE],
  condensedFraction: ['The share that condenses', M.PLAIN],
  deltaTK: ['Supply minus return', M.TEMPERATURE_DIFFERENCE],
  dewPointC: ['The dew point', M.TEMPERATURE],
  endPressureBarG: ['The highest hot pressure', M.SYSTEM_PRESSURE],
  expandedWaterL: ['The water that expands', M.VOLUME],
  expansionFraction: ['The expansion', M.PLAIN],
  fillPressureBarG: ['The pressure', M.SYSTEM_PRESSURE],
  gasVolumeL: ['The gas the readings ask for', M.VOLUME],
  generatorContentLPerKw: ['Water in the boiler', M.LITRES_PER_KW],
  glycolMassPct: ['Glycol by mass', M.SHARE],
  hotC: ['The hot water', M.TEMPERATURE],
  hotPressureBarG: ['The hot pressure', M.SYSTEM_PRESSURE],
  lambda: ['λ', M.LAMBDA],
  o2DryVolPct: ['The O₂ worked out', M.SHARE],
  outputKw: ['The output', M.POWER],
  pressureMpaAbs: ['The absolute pressure', M.PLAIN],
  relativeRoughness: ['Roughness over diameter', M.PLAIN],
  returnSlopeAtFullLoad: ['How the return rises with the load', M.PLAIN],
  reynolds: ['The Reynolds number', M.PLAIN],
  riseK: ['The rise', M.TEMPERATURE_DIFFERENCE],
  siteRatingKw: ['The rating at this site', M.POWER],
  specificVolumeLPerKw: ['System water per kW', M.LITRES_PER_KW],
  staticPressureBar: ['The pressure of the height', M.SYSTEM_PRESSURE],
  supplyMinusReturnK: ['Supply minus return', M.TEMPERATURE_DIFFERENCE],
  temperatureC: ['The temperature of the liquid', M.TEMPERATURE],
  volumeFactor: ['The volume factor', M.PLAIN],
  waterReserveL: ['The water reserve', M.VOLUME],
  waterVapourMolFraction: ['The share of water vapour', M.PLAIN],
};

function eachOnce(words: readonly string[]): readonly string[] {
  return [...new Set(words)];
}
