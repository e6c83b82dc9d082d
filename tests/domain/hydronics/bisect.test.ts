import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bisect } from '../../../domain/hydronics/bisect.ts';

describe('bisect', () => {
  it('finds the point to the last digit, from either side', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        (point, below, above) => {
          const found = bisect({ low: point - below, high: point + above, isBelow: (value) => value < point });
          expect(Math.abs(found - point)).toBeLessThanOrEqual(Math.abs(point) * 1e-15 + 1e-15);
        },
      ),
    );
  });

  it('ends at an end when the point lies outside', () => {
    expect(bisect({ low: 1, high: 2, isBelow: () => true })).toBeCloseTo(2, 12);
    expect(bisect({ low: 1, high: 2, isBelow: () => false })).toBeCloseTo(1, 12);
    expect(bisect({ low: 3, high: 3, isBelow: () => true })).toBe(3);
  });
});
