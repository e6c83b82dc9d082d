import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outdoorForReturn, type ResetDesign, resetCurve } from '../../../../domain/hydronics/reset/resetCurve.ts';
import { twoPointReset } from '../../../../domain/hydronics/reset/twoPointReset.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

const design: ResetDesign = {
  designSupplyC: 75,
  designReturnC: 65,
  designRoomC: 20,
  designOutdoorC: -10,
  exponent: 1.3,
};

describe('resetCurve', () => {
  it('meets its design day and rests in warm weather', () => {
    const cold = unwrap(resetCurve({ ...design, outdoorC: -10 }));
    expect(cold.loadShare).toBe(1);
    expect(cold.supplyC).toBeCloseTo(75, 10);
    expect(cold.returnC).toBeCloseTo(65, 10);
    expect(unwrap(resetCurve({ ...design, outdoorC: 25 }))).toEqual({ loadShare: 0, supplyC: 20, returnC: 20 });
  });

  it('asks for more the colder it is', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: -20, max: 19, noNaN: true }),
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        fc.double({ min: 1, max: 1.5, noNaN: true }),
        (outdoorC, colderK, exponent) => {
          const at = (temperatureC: number) =>
            unwrap(resetCurve({ ...design, exponent, outdoorC: temperatureC })).supplyC;
          expect(at(outdoorC - colderK)).toBeGreaterThan(at(outdoorC));
        },
      ),
    );
  });

  it('refuses a day so cold that the supply would boil', () => {
    expect(resetCurve({ ...design, designSupplyC: 95, designReturnC: 85, outdoorC: -40 })).toMatchObject({
      ok: false,
      error: { quantity: 'supplyC', validMax: 120 },
    });
  });

  it('answers up to 120 °C of supply', () => {
    const hot = { ...design, designSupplyC: 120, designReturnC: 110 };
    expect(unwrap(resetCurve({ ...hot, outdoorC: -9.99 })).supplyC).toBeGreaterThan(119.9);
    expect(resetCurve({ ...hot, outdoorC: -10.1 })).toMatchObject({ ok: false });
  });
});

describe('outdoorForReturn', () => {
  it('is the day on which the curve gives that return', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 25, max: 64, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (returnBelowC, internalGainK) => {
          const gained = { ...design, internalGainK };
          const below = unwrap(outdoorForReturn({ ...gained, returnBelowC }));
          if (below.kind !== 'above') throw new Error(below.kind);
          expect(unwrap(resetCurve({ ...gained, outdoorC: below.outdoorC })).returnC).toBeCloseTo(returnBelowC, 8);
        },
      ),
    );
  });

  it('says so when it is every day or none', () => {
    const kind = (returnBelowC: number) => unwrap(outdoorForReturn({ ...design, returnBelowC })).kind;
    expect([kind(66), kind(65), kind(64.9), kind(20.1), kind(20), kind(10)]).toEqual([
      'down-to-the-design-day',
      'down-to-the-design-day',
      'above',
      'above',
      'never',
      'never',
    ]);
  });

  it('refuses a design whose return falls with the load', () => {
    const wide = (designReturnC: number) =>
      outdoorForReturn({ ...design, designSupplyC: 80, designReturnC, returnBelowC: 23 });
    // (53 − 20)/1.3 − 27
    expect(wide(26)).toMatchObject({
      ok: false,
      error: { quantity: 'returnSlopeAtFullLoad', value: expect.closeTo(-1.6154, 4) },
    });
    expect(wide(30)).toMatchObject({ ok: true });
  });
});

describe('twoPointReset', () => {
  const line = { designOutdoorC: -10, designSupplyC: 70, warmOutdoorC: 20, warmSupplyC: 30, outdoorC: 5 };

  it('is a line between its points and flat beyond them', () => {
    const at = (outdoorC: number) => unwrap(twoPointReset({ ...line, outdoorC }));
    expect([at(-30), at(-10), at(5), at(20), at(30)]).toEqual([70, 70, 50, 30, 30]);
  });

  it('never leaves its two supplies', async () => {
    await fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), (outdoorC) => {
        const supplyC = unwrap(twoPointReset({ ...line, outdoorC }));
        expect(supplyC).toBeGreaterThanOrEqual(30);
        expect(supplyC).toBeLessThanOrEqual(70);
      }),
    );
  });
});

describeRanges('resetCurve', resetCurve, { ...design, internalGainK: 2, outdoorC: 0, roomC: 20 }, [
  ['designSupplyC', 65, 120],
  ['designReturnC', 20.5, 75],
  ['designRoomC', 5, 35],
  ['designOutdoorC', -60, 17, { outdoorC: 18 }],
  ['exponent', 1, 1.5],
  ['internalGainK', 0, 20],
  ['outdoorC', -60, 50, { designOutdoorC: -60 }],
  ['roomC', 5, 35],
]);
describeRanges('outdoorForReturn', outdoorForReturn, { ...design, returnBelowC: 55 }, [['returnBelowC', 0, 120]]);
describeRanges(
  'twoPointReset',
  twoPointReset,
  { designOutdoorC: -10, designSupplyC: 70, warmOutdoorC: 20, warmSupplyC: 30, outdoorC: 5 },
  [
    ['designOutdoorC', -60, 40, { warmOutdoorC: 41 }],
    ['warmOutdoorC', -9, 41],
    ['designSupplyC', 30, 120],
    ['warmSupplyC', 5, 70],
    ['outdoorC', -60, 60],
  ],
);
