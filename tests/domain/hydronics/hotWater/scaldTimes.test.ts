import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  SCALD_TIMES,
  STORED_WATER_C,
  shortestScaldTime,
  USUAL_BATHING_LIMIT_C,
  USUAL_OUTLET_C,
} from '../../../../domain/hydronics/hotWater/scaldTimes.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('SCALD_TIMES', () => {
  it('is as printed', () => {
    expect(SCALD_TIMES.map(({ waterC, seconds, who, degree }) => [waterC, seconds, who, degree])).toEqual([
      [expect.closeTo(65.56, 2), 2, 'adult', 'third'],
      [expect.closeTo(60, 2), 6, 'adult', 'third'],
      [expect.closeTo(54.44, 2), 30, 'adult', 'third'],
      [expect.closeTo(48.89, 2), 300, 'adult', 'third'],
      [60, 3, 'adult', 'second'],
      [60, 5, 'adult', 'third'],
      [55, 17, 'adult', 'second'],
      [55, 30, 'adult', 'third'],
      [51, 120, 'adult', 'second'],
      [51, 252, 'adult', 'third'],
      [49, 480, 'adult', 'second'],
      [49, 600, 'adult', 'third'],
      [48, 900, 'adult', 'second'],
      [48, 1200, 'adult', 'third'],
      [45, 7200, 'adult', 'second'],
      [45, 10800, 'adult', 'third'],
      [expect.closeTo(65.56, 2), 0.5, 'child', 'not stated'],
      [expect.closeTo(60, 2), 1, 'child', 'not stated'],
      [expect.closeTo(56.11, 2), 15, 'child', 'not stated'],
      [expect.closeTo(48.89, 2), 240, 'child', 'not stated'],
    ]);
  });
});

describe('shortestScaldTime', () => {
  it.each([
    [57, 1],
    [55.5, 15],
    [52, 30],
    [50, 120],
    [48.5, 240],
    [46, 900],
    [70, 0.5],
    [100, 0.5],
  ])('takes the hotter row between two: %s °C, %s s', (waterC, seconds) => {
    expect(unwrap(shortestScaldTime({ waterC })).seconds).toBe(seconds);
  });

  it('never takes longer when the water is hotter, and never longer than any row it has reached', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 45, max: 99, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (waterC, hotterK) => {
          const shortest = unwrap(shortestScaldTime({ waterC })).seconds;
          expect(unwrap(shortestScaldTime({ waterC: waterC + hotterK })).seconds).toBeLessThanOrEqual(shortest);
          for (const row of SCALD_TIMES) if (row.waterC <= waterC) expect(shortest).toBeLessThanOrEqual(row.seconds);
        },
      ),
    );
  });
});

describe('delivery and storage', () => {
  it('are as printed', () => {
    expect(USUAL_BATHING_LIMIT_C).toBe(49);
    expect(USUAL_OUTLET_C).toEqual([48, 50]);
    expect(STORED_WATER_C).toEqual({
      storeAtLeast: 60,
      outletAtLeastWithinAMinute: 50,
      healthcareOutletAtLeast: 55,
      coldBelow: 20,
    });
  });
});

describeRanges('shortestScaldTime', shortestScaldTime, { waterC: 50 }, [['waterC', 45, 100]]);
