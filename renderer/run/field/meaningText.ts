/** One of the meanings of an ambiguous text, written so that it has no second one. */
import type { TypedMeaning } from '../../../domain/quantity/parseTyped.ts';

export type PickedMeaning = Pick<TypedMeaning, 'valueTyped' | 'unit'>;

export function meaningText({ valueTyped, unit }: PickedMeaning): string {
  const plain = String(valueTyped);
  // Three decimals could be thousands again: a fourth one settles it.
  const number = /\.\d{3}$/.test(plain) ? `${plain}0` : plain;
  return unit === '' ? number : `${number} ${unit}`;
}
