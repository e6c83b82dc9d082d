/** What a formula was fed with, in words: a quantity by its label and in its own unit, anything else by its name. */
import { isQuantityKey } from '../../../domain/quantity/quantities.ts';
import { decimalText } from '../../sealing/decimalText.ts';
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
  const isNumber = decimalText.safeParse(value).success;
  if (isQuantityKey(name) && isNumber) return `${quantityLabel(name)} ${withUnit(valueText(name, value, 'metric'))}`;
  return `${asWords(name)} ${isNumber ? shortNumber(value) : value}`;
}

/** Five figures are more than any instrument gives; the record has all of them. */
export function shortNumber(value: string): string {
  return String(Number(Number(value).toPrecision(5)));
}
