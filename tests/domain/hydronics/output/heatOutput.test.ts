import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WATER } from '../../../../domain/hydronics/fluid/systemFluid.ts';
import { flowFromOutput } from '../../../../domain/hydronics/output/flowFromOutput.ts';
import { heatOutput, heatPerLitreKelvin } from '../../../../domain/hydronics/output/heatOutput.ts';
import { heatOutputSimple } from '../../../../domain/hydronics/output/heatOutputSimple.ts';
import {
  heatOutputUncertainty,
  LEAST_USEFUL_DELTA_T_K,
} from '../../../../domain/hydronics/output/heatOutputUncertainty.ts';
import { flowByMetricRule, flowByUsRule, outputByUsRule } from '../../../../domain/hydronics/output/ruleOfThumbFlow.ts';
import { trueFlowFactor } from '../../../../domain/hydronics/output/trueFlowFactor.ts';
import { USUAL_TEMPERATURE_DIFFERENCES } from '../../../../domain/hydronics/output/usualTemperatureDifferences.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

const circuit = { meterC: 50, supplyC: 70, returnC: 50, fluid: WATER };

describe('heat output', () => {
  it('gives back the flow it was worked out from', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0.2, max: 60, noNaN: true }),
        (flowLPerMin, deltaTK) => {
          const temperatures = { meterC: 30, supplyC: 30 + deltaTK, returnC: 30, fluid: WATER };
          const outputKw = unwrap(heatOutput({ ...temperatures, flowLPerMin }));
          expect(unwrap(flowFromOutput({ ...temperatures, outputKw }))).toBeCloseTo(flowLPerMin, 8);
        },
      ),
    );
  });

  it('counts about 1 % less when the meter sits in the supply', () => {
    const atReturn = unwrap(heatOutput({ ...circuit, flowLPerMin: 20 }));
    const atSupply = unwrap(heatOutput({ ...circuit, flowLPerMin: 20, meterC: 70 }));
    expect(1 - atSupply / atReturn).toBeCloseTo(0.0104, 3);
  });

  it('is nothing without a difference, and an error when the return is hotter', () => {
    expect(heatOutput({ ...circuit, flowLPerMin: 20, supplyC: 50 })).toEqual({ ok: true, value: 0 });
    expect(heatOutput({ ...circuit, flowLPerMin: 20, supplyC: 49 })).toMatchObject({
      ok: false,
      error: { quantity: 'supplyMinusReturnK', value: -1 },
    });
  });

  it('takes the true factor for what a gallon carries: Btu/h = k·gpm·ΔT°F', () => {
    const gallonPerMinute = 3.785411784;
    const kw = unwrap(heatOutput({ flowLPerMin: gallonPerMinute, meterC: 60, supplyC: 61, returnC: 59, fluid: WATER }));
    const factor = unwrap(trueFlowFactor({ fluid: WATER, temperatureC: 60 }));
    expect((kw * 3412.141633) / (2 * 1.8)).toBeCloseTo(factor, 5);
  });

  it('refuses what freezes or boils', () => {
    expect(heatPerLitreKelvin({ meterC: -1, meanC: 20, fluid: WATER })).toMatchObject({ ok: false });
    expect(heatPerLitreKelvin({ meterC: 20, meanC: 121, fluid: WATER })).toMatchObject({ ok: false });
    expect(trueFlowFactor({ fluid: WATER, temperatureC: -1 })).toMatchObject({ ok: false });
  });
});

describe('heat output uncertainty', () => {
  it('adds the flow meter by root-sum-square: 3 % and 4 % make 5 %', () => {
    const known = unwrap(heatOutputUncertainty({ supplySensorK: 0.3, returnSensorK: 0, deltaTK: 10, flowPct: 4 }));
    expect(known.uncertaintyPct).toBeCloseTo(5, 12);
  });

  it('is exact for two sensors', () => {
    const two = unwrap(heatOutputUncertainty({ supplySensorK: 0.3, returnSensorK: 0.4, deltaTK: 10, flowPct: 0 }));
    expect(two.uncertaintyPct).toBeCloseTo(5, 12);
  });

  it('calls a difference below 5 K not useful', () => {
    const isUseful = (deltaTK: number) =>
      unwrap(heatOutputUncertainty({ supplySensorK: 0.3, returnSensorK: 0.3, deltaTK, flowPct: 0 })).isDeltaTUseful;
    expect([isUseful(4.99), isUseful(5)]).toEqual([false, true]);
    expect(LEAST_USEFUL_DELTA_T_K).toBe(5);
  });
});

describe('rules of thumb', () => {
  it('are what they are called', () => {
    expect(unwrap(flowByMetricRule({ outputKw: 20, deltaTK: 20 }))).toBe(860);
    expect(unwrap(flowByUsRule({ outputBtuPerH: 100_000, deltaTF: 20 }))).toBe(10);
    expect(unwrap(outputByUsRule({ flowUsGpm: 10, deltaTF: 20 }))).toBe(100_000);
    expect(unwrap(heatOutputSimple({ flowLPerMin: 60, deltaTK: 10 }))).toBeCloseTo(41.86, 12);
  });
});

describe('usual temperature differences', () => {
  it('are as printed', () => {
    expect(USUAL_TEMPERATURE_DIFFERENCES.map(({ circuit: kind, deltaTK }) => [kind, ...deltaTK])).toEqual([
      ['fin-tube-or-cast-iron', expect.closeTo(11.111, 3), expect.closeTo(11.111, 3)],
      ['european-radiator-rating', 10, 10],
      ['boiler-rating', 20, 20],
      ['condensing-radiators', 20, 20],
      ['floor-loops', 5, 10],
      ['hot-water-plate', 30, 50],
    ]);
  });
});

describeRanges('heatOutput', heatOutput, { ...circuit, flowLPerMin: 20 }, [
  ['flowLPerMin', 0, 10_000],
  ['meterC', 0, 120],
  ['supplyC', 50, null],
  ['returnC', null, 70],
]);
describeRanges('flowFromOutput', flowFromOutput, { ...circuit, outputKw: 20 }, [
  ['outputKw', 0, 10_000],
  ['meterC', 0, 120],
  ['supplyC', 0.1, null, { returnC: 0 }],
  ['returnC', null, -0.1, { supplyC: 0, fluid: { kind: 'propylene-glycol', glycolMassPct: 30 } }],
]);
describeRanges('heatOutputSimple', heatOutputSimple, { flowLPerMin: 20, deltaTK: 20 }, [
  ['flowLPerMin', 0, 10_000],
  ['deltaTK', 0, 120],
]);
describeRanges(
  'heatOutputUncertainty',
  heatOutputUncertainty,
  { supplySensorK: 0.3, returnSensorK: 0.3, deltaTK: 20, flowPct: 2 },
  [
    ['supplySensorK', 0, 20],
    ['returnSensorK', 0, 20],
    ['deltaTK', 0.1, 120],
    ['flowPct', 0, 100],
  ],
);
describeRanges('flowByMetricRule', flowByMetricRule, { outputKw: 20, deltaTK: 20 }, [
  ['outputKw', 0, 10_000],
  ['deltaTK', 0.1, 120],
]);
describeRanges('flowByUsRule', flowByUsRule, { outputBtuPerH: 100_000, deltaTF: 20 }, [
  ['outputBtuPerH', 0, 40_000_000],
  ['deltaTF', 0.2, 200],
]);
describeRanges('outputByUsRule', outputByUsRule, { flowUsGpm: 10, deltaTF: 20 }, [
  ['flowUsGpm', 0, 3000],
  ['deltaTF', 0, 200],
]);
