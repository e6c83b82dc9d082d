import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WATER } from '../../../../domain/hydronics/fluid/systemFluid.ts';
import { coldFillPressure, heightServed } from '../../../../domain/hydronics/pressure/coldFillPressure.ts';
import { netPositiveSuctionHead } from '../../../../domain/hydronics/pressure/netPositiveSuctionHead.ts';
import {
  CIRCULATOR_INLET_MINIMUM,
  PRESSURE_CUSTOMS,
  reliefRiseLimitPct,
} from '../../../../domain/hydronics/pressure/pressureCustoms.ts';
import {
  METRIC_RULE_BAR_PER_M,
  staticGradient,
  US_RULE_BAR_PER_M,
} from '../../../../domain/hydronics/pressure/staticGradient.ts';
import { barToPsi, psiToBar } from '../../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('cold fill', () => {
  it('serves the height it was worked out for', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 0, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (systemHeightM, marginBar) => {
          const fillPressureBarG = unwrap(coldFillPressure({ systemHeightM, marginBar }));
          expect(unwrap(heightServed({ fillPressureBarG, marginBar }))).toBeCloseTo(systemHeightM, 9);
        },
      ),
    );
  });

  it('knows the rules by their names', () => {
    expect(METRIC_RULE_BAR_PER_M).toBe(0.1);
    expect(barToPsi(US_RULE_BAR_PER_M) * 0.3048).toBeCloseTo(0.433, 12);
  });

  it('errs by 2 % on the cautious side with the metric rule', () => {
    expect(METRIC_RULE_BAR_PER_M / unwrap(staticGradient({ fluid: WATER, temperatureC: 10 })) - 1).toBeCloseTo(0.02, 3);
    expect(unwrap(staticGradient({ fluid: WATER, temperatureC: 10 }))).toBeCloseTo((999.7 * 9.80665) / 1e5, 6);
  });
});

describe('suction head', () => {
  it('loses what the suction pipe takes', () => {
    const free = unwrap(netPositiveSuctionHead({ waterC: 60, suctionBarG: 1 }));
    expect(unwrap(netPositiveSuctionHead({ waterC: 60, suctionBarG: 1, suctionLossM: 1.5 }))).toBeCloseTo(
      free - 1.5,
      12,
    );
  });

  it('falls with heat and with altitude', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 0, max: 119, noNaN: true }),
        fc.double({ min: 51, max: 110, noNaN: true }),
        (waterC, air) => {
          const head = (warmerK: number, thinnerKpa: number) =>
            unwrap(
              netPositiveSuctionHead({
                waterC: waterC + warmerK,
                suctionBarG: 1,
                atmosphericPressureKpaAbs: air - thinnerKpa,
              }),
            );
          expect(head(0, 1)).toBeLessThan(head(0, 0));
          if (waterC > 40) expect(head(1, 0)).toBeLessThan(head(0, 0));
        },
      ),
    );
  });

  it('is the printed balance, with vapour pressure and density of the property table (80 °C)', () => {
    const byHand = (101_325 + 50_000 - 47_415) / (971.8 * 9.80665);
    expect(Math.abs(unwrap(netPositiveSuctionHead({ waterC: 80, suctionBarG: 0.5 })) - byHand)).toBeLessThan(0.001);
  });

  it('is below zero where the water boils', () => {
    expect(unwrap(netPositiveSuctionHead({ waterC: 110, suctionBarG: 0 }))).toBeLessThan(0);
  });
});

describe('pressure customs', () => {
  it('are as printed', () => {
    expect(PRESSURE_CUSTOMS.europe).toMatchObject({
      marginBar: { usual: [0.2, 0.3], default: 0.3 },
      usualColdFillBarG: [1, 1.5],
      reliefSettingBarG: 3,
    });
    const american = PRESSURE_CUSTOMS['north-america'];
    expect(american.marginBar.usual.map(barToPsi)).toEqual([expect.closeTo(4, 9), expect.closeTo(5, 9)]);
    expect(barToPsi(american.marginBar.default)).toBeCloseTo(4, 9);
    expect(american.usualColdFillBarG.map(barToPsi)).toEqual([expect.closeTo(12, 9), expect.closeTo(12, 9)]);
    expect(barToPsi(american.reliefSettingBarG)).toBeCloseTo(30, 9);
    expect(CIRCULATOR_INLET_MINIMUM).toEqual([
      { waterC: 75, inletBarG: 0.05 },
      { waterC: 95, inletBarG: 0.3 },
    ]);
  });

  it('know the 20 % rise only up to 30 psi', () => {
    expect(reliefRiseLimitPct({ maximumAllowableBarG: psiToBar(30) })).toBe(20);
    expect(reliefRiseLimitPct({ maximumAllowableBarG: psiToBar(30.01) })).toBeUndefined();
    expect(reliefRiseLimitPct({ maximumAllowableBarG: Number.NaN })).toBeUndefined();
  });
});

const fill = { systemHeightM: 7, marginBar: 0.3, gradientBarPerM: 0.1 };
describeRanges('coldFillPressure', coldFillPressure, fill, [
  ['systemHeightM', 0, 200],
  ['marginBar', 0, 3],
  ['gradientBarPerM', 0.09, 0.12],
]);
describeRanges('heightServed', heightServed, { fillPressureBarG: 5, marginBar: 0.3, gradientBarPerM: 0.1 }, [
  ['fillPressureBarG', 0.3, 20],
  ['marginBar', 0, 3],
  ['gradientBarPerM', 0.09, 0.12],
]);
describeRanges('staticGradient', staticGradient, { fluid: WATER, temperatureC: 20 }, [['temperatureC', 0, 120]]);
describeRanges(
  'netPositiveSuctionHead',
  netPositiveSuctionHead,
  { waterC: 60, suctionBarG: 1, atmosphericPressureKpaAbs: 100, suctionLossM: 1 },
  [
    ['waterC', 0, 120],
    ['suctionBarG', -1, 20],
    ['atmosphericPressureKpaAbs', 50, 110],
    ['suctionLossM', 0, 100],
  ],
);
