/** Numbers of a sealed record are written as plain decimals: exact, without exponent, and read alike by every program. */
import { z } from 'zod';

/** No exponent, no plus sign, no superfluous zeros, no minus zero: one number has one text. */
export const decimalText = z
  .string()
  .regex(/^(0|-?[1-9]\d*|-?(0|[1-9]\d*)\.\d*[1-9])$/, 'a plain decimal number: 4.5, -12, 0.003');

/** The shortest text that reads back to the same number. */
export function toDecimalText(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`only a finite number can be sealed, not ${value}`);
  const [mantissa = '0', exponentText] = String(value === 0 ? 0 : value).split('e');
  if (exponentText === undefined) return mantissa;
  const sign = mantissa.startsWith('-') ? '-' : '';
  const [whole = '', fraction = ''] = mantissa.replace('-', '').split('.');
  const digits = whole + fraction;
  const pointAt = whole.length + Number(exponentText);
  if (pointAt <= 0) return `${sign}0.${'0'.repeat(-pointAt)}${digits}`;
  return `${sign}${digits.padEnd(pointAt, '0')}`;
}

export function fromDecimalText(text: string): number {
  return Number(decimalText.parse(text));
}
