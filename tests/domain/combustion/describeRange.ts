/**
 * A formula answers up to the very edge of its validity and refuses past it, by name of the quantity, never with a number.
 */
import { describe, expect, it } from 'vitest';
import type { Result } from '../../../domain/result.ts';

export type RangeCase = {
  readonly quantity: string;
  readonly min: number;
  readonly max: number;
  readonly call: (value: number) => Result<unknown, unknown>;
};

/** Close enough to a bound to notice that it has moved by 1 %. */
const STEP_SHARE_OF_BOUND = 0.005;

export function describeRanges(formula: string, cases: readonly RangeCase[]): void {
  describe(`${formula} refuses what it does not hold for`, () => {
    it.each(cases)('$quantity answers at $min and $max', ({ min, max, call }) => {
      expect(call(min)).toMatchObject({ ok: true });
      expect(call(max)).toMatchObject({ ok: true });
    });

    it.each(cases)('$quantity is refused outside $min…$max and for NaN', ({ quantity, min, max, call }) => {
      const outside = [
        min - step(min),
        max + step(max),
        Number.NaN,
        Number.NEGATIVE_INFINITY,
        Number.POSITIVE_INFINITY,
      ];
      for (const value of outside) {
        expect(call(value)).toMatchObject({ ok: false, error: { code: 'out-of-range', quantity } });
      }
    });
  });
}

function step(bound: number): number {
  return bound === 0 ? 1e-6 : Math.abs(bound) * STEP_SHARE_OF_BOUND;
}
