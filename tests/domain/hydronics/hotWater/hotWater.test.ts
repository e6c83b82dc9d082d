import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hotShare } from '../../../../domain/hydronics/hotWater/hotShare.ts';
import { hotWaterFlow, hotWaterRise } from '../../../../domain/hydronics/hotWater/hotWaterFlow.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('hot water', () => {
  it('rises by what its flow was worked out for', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 5, max: 200, noNaN: true }),
        fc.double({ min: 1, max: 25, noNaN: true }),
        fc.double({ min: 1.1, max: 60, noNaN: true }),
        (outputKw, coldC, riseK) => {
          const flowLPerMin = unwrap(hotWaterFlow({ outputKw, coldC, riseK }));
          expect(unwrap(hotWaterRise({ outputKw, coldC, flowLPerMin }))).toBeCloseTo(riseK, 7);
        },
      ),
    );
  });

  it('refuses a flow that would boil or stay cold', () => {
    expect(hotWaterRise({ outputKw: 24, coldC: 10, flowLPerMin: 1 })).toMatchObject({
      ok: false,
      error: { quantity: 'outputKw' },
    });
    expect(hotWaterRise({ outputKw: 1, coldC: 10, flowLPerMin: 100 })).toMatchObject({ ok: false });
    expect(hotWaterFlow({ outputKw: 24, coldC: 40, riseK: 61 })).toMatchObject({
      ok: false,
      error: { quantity: 'hotC' },
    });
    expect(hotWaterFlow({ outputKw: 24, coldC: 40, riseK: 60 })).toMatchObject({ ok: true });
  });

  it('reaches 90 K of rise, or 100 °C, and no less than 1 K', () => {
    const outputOf = (coldC: number, riseK: number) => {
      const flowLPerMin = 10;
      const perKw = unwrap(hotWaterFlow({ outputKw: 1, coldC, riseK }));
      return { coldC, flowLPerMin, outputKw: flowLPerMin / perKw };
    };
    expect(unwrap(hotWaterRise(outputOf(5, 89.9)))).toBeCloseTo(89.9, 6);
    expect(hotWaterRise({ ...outputOf(5, 90), outputKw: outputOf(5, 90).outputKw * 1.001 })).toMatchObject({
      ok: false,
    });
    expect(unwrap(hotWaterRise(outputOf(30, 69.9)))).toBeCloseTo(69.9, 6);
    expect(hotWaterRise({ ...outputOf(30, 70), outputKw: outputOf(30, 70).outputKw * 1.001 })).toMatchObject({
      ok: false,
    });
    expect(unwrap(hotWaterRise(outputOf(10, 1.001)))).toBeCloseTo(1.001, 6);
    expect(hotWaterRise({ ...outputOf(10, 1), outputKw: outputOf(10, 1).outputKw * 0.999 })).toMatchObject({
      ok: false,
    });
  });
});

describe('hotShare', () => {
  it('mixes back to the temperature asked for', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 45, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (coldC, hotC, part) => {
          const mixedC = coldC + part * (hotC - coldC);
          const share = unwrap(hotShare({ hotC, coldC, mixedC: Math.min(mixedC, hotC) }));
          expect(share * hotC + (1 - share) * coldC).toBeCloseTo(mixedC, 9);
        },
      ),
    );
  });
});

describeRanges('hotWaterFlow', hotWaterFlow, { outputKw: 24, coldC: 10, riseK: 35 }, [
  ['outputKw', 0, 1000],
  ['coldC', 0, 40],
  ['riseK', 1, 90, { coldC: 5 }],
]);
describeRanges('hotWaterRise', hotWaterRise, { outputKw: 24, coldC: 10, flowLPerMin: 10 }, [
  ['outputKw', null, 1000, { flowLPerMin: 400 }],
  ['coldC', 0, 40],
  ['flowLPerMin', null, null],
]);
describeRanges('hotShare', hotShare, { hotC: 60, coldC: 10, mixedC: 40 }, [
  ['coldC', 0, 40, { mixedC: 50 }],
  ['hotC', 40, 100],
  ['mixedC', 10, 60],
]);
describeRanges('hotShare, narrow', hotShare, { hotC: 60, coldC: 10, mixedC: 10 }, [['hotC', 11, null]]);
