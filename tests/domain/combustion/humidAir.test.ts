/** Against PsychroLib, an independent implementation of the ASHRAE Handbook (Fundamentals 2017, chapter 1). */
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import { airVapourMolPerMol } from '../../../domain/combustion/humidAir.ts';
import { unwrap } from '../../../domain/result.ts';

const psychrolib: {
  readonly SI: number;
  SetUnitSystem(units: number): void;
  GetHumRatioFromRelHum(dryBulbC: number, relativeHumidity: number, pressurePa: number): number;
} = createRequire(import.meta.url)('psychrolib');

/** Mass of water over mass of dry air, per mole of each (the library's 0.621945). */
const WATER_OVER_AIR = 0.621945;
/** Another saturation formula, and air taken as ideal on both sides. */
const FORMULATIONS_AGREE_WITHIN = 1e-3;

describe('vapour of the combustion air', () => {
  beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI));

  it.each([
    [1, 80, 101.325],
    [10, 50, 95],
    [20, 50, 101.325],
    [25, 60, 101.325],
    [30, 90, 84.3],
    [45, 100, 70],
  ])('at %s °C, %s %%, %s kPa agrees with the ASHRAE formulation', (airC, relativeHumidityPct, pressureKpaAbs) => {
    const other =
      psychrolib.GetHumRatioFromRelHum(airC, relativeHumidityPct / 100, pressureKpaAbs * 1000) / WATER_OVER_AIR;
    const ours = unwrap(airVapourMolPerMol({ airC, relativeHumidityPct, pressureKpaAbs }));
    expect(Math.abs(ours / other - 1)).toBeLessThan(FORMULATIONS_AGREE_WITHIN);
  });
});
