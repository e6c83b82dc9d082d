import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalText, fromDecimalText, toDecimalText } from '../../../electron/sealing/decimalText.ts';

describe('decimalText', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [4.5, '4.5'],
    [-12, '-12'],
    [1e21, '1000000000000000000000'],
    [1.5e22, '15000000000000000000000'],
    [1e-7, '0.0000001'],
    [-2.5e-9, '-0.0000000025'],
    [0.1 + 0.2, '0.30000000000000004'],
  ])('writes %d as %s', (value, text) => {
    expect(toDecimalText(value)).toBe(text);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %d', (value) => {
    expect(() => toDecimalText(value)).toThrow('finite');
  });

  it.each(['1e5', '01', '1.', '.5', '+1', '-0', '1.50', '1,5', '', ' 1', 'NaN', '0x10'])('does not take %s', (text) => {
    expect(decimalText.safeParse(text).success).toBe(false);
  });

  it('should read back to the very same number', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const text = toDecimalText(value);
        expect(decimalText.safeParse(text).success).toBe(true);
        expect(fromDecimalText(text)).toBe(value === 0 ? 0 : value);
      }),
    );
  });
});
