import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../domain/result.ts';
import { type ReadingState, visitComparability } from '../../../domain/trend/visitComparability.ts';

const before: ReadingState = { firing: 'high', call: 'heating', returnC: 50 };
const obstacles = (after: Partial<ReadingState>) =>
  unwrap(visitComparability({ before, after: { ...before, ...after } }));

describe('visitComparability', () => {
  it('compares like with like', () => {
    expect(obstacles({})).toEqual([]);
    expect(obstacles({ returnC: 53 })).toEqual([]);
    expect(obstacles({ returnC: 47 })).toEqual([]);
  });

  it('names every obstacle', () => {
    expect(obstacles({ returnC: 53.02 })).toEqual(['other-return-temperature']);
    expect(obstacles({ firing: 'low', call: 'hot-water', returnC: 46.98 })).toEqual([
      'other-firing-point',
      'other-call',
      'other-return-temperature',
    ]);
  });

  it.each([-0.1, 120.1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a return of %s °C', (returnC) => {
    const odd = { ...before, returnC };
    expect(visitComparability({ before: odd, after: before })).toMatchObject({
      ok: false,
      error: { quantity: 'before.returnC', validMax: 120 },
    });
    expect(visitComparability({ before, after: odd })).toMatchObject({
      ok: false,
      error: { quantity: 'after.returnC', validMax: 120 },
    });
  });
});
