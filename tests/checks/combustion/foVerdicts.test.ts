/** What the Fo rows say beside the number: pass, fail, or caught only by the tight band. */
import { describe, expect, it } from 'vitest';
import { EPA_FO_BANDS, type FoPlausibility, foPlausibility } from '../../../domain/combustion/foPlausibility.ts';
import type { Fuel } from '../../../domain/combustion/fuel.ts';
import { G20, G25, G30, G31, HD_5, NG_US, OIL_2 } from '../../../domain/combustion/fuels.ts';
import { unwrap } from '../../../domain/result.ts';
import { TEXTBOOK_GAS } from './textbookGas.ts';

function test(fuel: Fuel, o2DryVolPct: number, co2DryVolPct: number, coPpmDry = 0): FoPlausibility {
  return unwrap(foPlausibility({ fuel, o2DryVolPct, co2DryVolPct, coPpmDry }));
}

describe('Fo verdicts', () => {
  it.each([
    ['FO-05 true pair', test(G20, 5, 8.91), true, true],
    ['FO-06 textbook methane with 0.5 % CO', test(G20, 2.95, 9.7, 5000), true, true],
    ['FO-07 textbook gas with 0.2 % CO', test(TEXTBOOK_GAS, 7, 7.8, 2000), true, true],
    ['FO-08 O2 and CO2 swapped', test(G20, 8.91, 5), false, false],
    ['FO-09 wet values entered as dry', test(G20, 4.24, 7.56), false, false],
    ['FO-10 analyser set to propane', test(G20, 5, 10.44), false, false],
    ['FO-11 digit slip 8.91 → 9.81: only the tight band', test(G20, 5, 9.81), true, false],
    ['FO-12 dilution before the probe: not caught', test(G20, 8.19, 7.13), true, true],
  ] as const)('%s', (_name, result, isInsideEpaBand, isInsideTightBand) => {
    expect(result).toMatchObject({ isInsideEpaBand, isInsideTightBand });
  });

  it('O2 sensor 0.5 % low on the true pair falls just outside the EPA band (Fo 1.84)', () => {
    const result = test(G20, 4.5, 8.91);
    expect(result.fo).toBeCloseTo(1.84, 2);
    expect(result.isInsideEpaBand).toBe(false);
  });

  it('FO-10 lies in the propane band: the pair tells the analyser setting', () => {
    const { fo } = test(G20, 5, 10.44);
    expect(fo).toBeGreaterThan(EPA_FO_BANDS.propane.min);
    expect(fo).toBeLessThan(EPA_FO_BANDS.propane.max);
  });

  it('the bands are those of EPA Method 3B (from memory)', () => {
    expect(EPA_FO_BANDS).toEqual({
      'natural-gas': { min: 1.6, max: 1.836 },
      propane: { min: 1.434, max: 1.586 },
      butane: { min: 1.405, max: 1.553 },
      'distillate-oil': { min: 1.26, max: 1.413 },
    });
  });

  it.each([G20, NG_US, G25, G31, HD_5, G30, OIL_2])('the composition of $name lies inside its own EPA band', (fuel) => {
    expect(test(fuel, 0, fuel.co2MaxDryVolPct)).toMatchObject({ isInsideEpaBand: true, deviation: 0 });
  });

  it('the tight band is ± 0.08 on rich flue gas and widens to 0.7/CO2 when CO2 is low', () => {
    const widthAt = (co2DryVolPct: number) => {
      const { tightBand } = test(G20, 5, co2DryVolPct);
      return (tightBand.max - tightBand.min) / 2;
    };
    expect(widthAt(9.81)).toBeCloseTo(0.08, 12);
    expect(widthAt(5)).toBeCloseTo(0.14, 12);
  });
});
