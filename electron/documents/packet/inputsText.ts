/** What a formula was fed with, in words: a quantity by its label, anything else by its name with the unit its name ends in. */
import { isQuantityKey } from '../../../domain/quantity/quantities.ts';
import { decimalText } from '../../sealing/decimalText.ts';
import { dayText } from '../documentDates.ts';
import { asWords, quantityLabel, valueText, withUnit } from './quantityText.ts';

export function inputsText(inputs: Readonly<Record<string, string>>): string {
  return (
    Object.entries(inputs)
      // Ids of readings are for programs.
      .filter(([key]) => !key.endsWith('.reading') && key !== 'reading')
      .map(([key, value]) => inputText(key, value))
      .join(', ')
  );
}

/** A key may name the point and the sample after the quantity: `coPpm@high#2`. */
function inputText(key: string, value: string): string {
  const name = key.replace(/[@#].*$/u, '');
  if (!decimalText.safeParse(value).success) {
    return `${asWords(name)} ${/^\d{4}-\d{2}-\d{2}$/u.test(value) ? dayText(value) : value}`;
  }
  if (isQuantityKey(name)) return `${quantityLabel(name)} ${withUnit(valueText(name, value, 'metric'))}`;
  const ending = UNIT_ENDINGS.find(([text]) => name.endsWith(text) && name.length > text.length);
  const number = shortNumber(value).replace('-', '\u2212');
  if (!ending) return `${asWords(name)} ${number}`;
  return `${asWords(name.slice(0, -ending[0].length))} ${number}\u00a0${ending[1]}`;
}

/** As the names of quantities end; longer endings first. */
const UNIT_ENDINGS = [
  ['KpaAbs', 'kPa abs'],
  ['MbarG', 'mbar'],
  ['BarG', 'bar'],
  ['Mbar', 'mbar'],
  ['Bar', 'bar'],
  ['Pct', '%'],
  ['Ppm', 'ppm'],
  ['Kw', 'kW'],
  ['Ft', 'ft'],
  ['C', '°C'],
  ['K', 'K'],
  ['M', 'm'],
  ['S', 's'],
] as const;

/** Five figures are more than any instrument gives; the record has all of them. */
function shortNumber(value: string): string {
  return String(Number(Number(value).toPrecision(5)));
}
