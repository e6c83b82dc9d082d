import { describe, expect, it } from 'vitest';
import { isWithinInputLimit } from '../../electron/inputSize.ts';

describe('isWithinInputLimit', () => {
  it.each([
    ['text', 'x'.repeat(600)],
    ['a long key', { ['k'.repeat(600)]: 1 }],
    ['many small things', Array.from({ length: 200 }, () => ({}))],
    ['a sparse list', new Array(1_000_000_000)],
    ['bytes', new Uint8Array(1_001)],
    ['a bare buffer', new ArrayBuffer(1_001)],
    ['a map', new Map([['a', 'x'.repeat(600)]])],
    ['a set', new Set(['x'.repeat(600)])],
    ['deep nesting', Array.from({ length: 200 }).reduce<unknown>((inner) => [inner], null)],
  ])('is false over the limit: %s', (_what, value) => {
    expect(isWithinInputLimit(value, 1_000)).toBe(false);
  });

  it('ends on a circle', () => {
    const circle: Record<string, unknown> = {};
    circle['self'] = circle;
    expect(isWithinInputLimit(circle, 1_000)).toBe(false);
  });

  it.each([[undefined], [null], [0], ['x'.repeat(400)], [{ visit: 1, readings: [1, 2, 3], when: new Date(0) }]])(
    'is true for the input of an operation: %j',
    (value) => {
      expect(isWithinInputLimit(value, 1_000)).toBe(true);
    },
  );
});
