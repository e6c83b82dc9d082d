import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hydraulicIndex, pressureDropRatio } from '../../../../domain/hydronics/pipes/hydraulicIndex.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('hydraulicIndex', () => {
  it('is V̇/√Δp', () => {
    expect(unwrap(hydraulicIndex({ flowLPerMin: 20, pressureDropKpa: 16 }))).toBe(5);
  });

  it('stays the same in an unchanged circuit, whatever the pump does', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (before, after) => {
          const ratio = unwrap(pressureDropRatio({ flowBeforeLPerMin: before, flowAfterLPerMin: after }));
          const drop = 5;
          fc.pre(drop * ratio > 0.01 && drop * ratio < 1000);
          const index = unwrap(hydraulicIndex({ flowLPerMin: before, pressureDropKpa: drop }));
          expect(unwrap(hydraulicIndex({ flowLPerMin: after, pressureDropKpa: drop * ratio }))).toBeCloseTo(index, 9);
        },
      ),
    );
  });
});

describeRanges('hydraulicIndex', hydraulicIndex, { flowLPerMin: 20, pressureDropKpa: 10 }, [
  ['flowLPerMin', 0, 100_000],
  ['pressureDropKpa', 0.01, 1000],
]);
describeRanges('pressureDropRatio', pressureDropRatio, { flowBeforeLPerMin: 20, flowAfterLPerMin: 15 }, [
  ['flowBeforeLPerMin', 0.001, 100_000],
  ['flowAfterLPerMin', 0.001, 100_000],
]);
