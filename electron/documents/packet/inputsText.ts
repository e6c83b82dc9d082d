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

function inputText(key: string, value: string): string {
  const isNumber = decimalText.safeParse(value).success;
  if (isQuantityKey(key) && isNumber) return `${quantityLabel(key)} ${withUnit(valueText(key, value, 'metric'))}`;
  return `${asWords(key)} ${isNumber ? shortNumber(value) : value}`;
}

/** Six figures are more than any instrument gives; the record has all of them. */
export function shortNumber(value: string): string {
  return String(Number(Number(value).toPrecision(6)));
}
