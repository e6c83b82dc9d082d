/** Against PsychroLib, an independent implementation of the ASHRAE Handbook (Fundamentals 2017, chapter 1). */
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../../domain/gas/standardAtmosphere.ts';
import { unwrap } from '../../../domain/result.ts';

const psychrolib: {
  readonly SI: number;
  SetUnitSystem(units: number): void;
  GetStandardAtmPressure(altitudeM: number): number;
  GetStandardAtmTemperature(altitudeM: number): number;
} = createRequire(import.meta.url)('psychrolib');

/** The library rounds the exponent to 5.2559: 7 parts in a million at 11 km. */
const EXPONENT_ROUNDING = 1e-5;

describe('standard atmosphere', () => {
  beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI));

  it.each([-500, 0, 300, 1500, 3000, 5000, 9000, 11_000])('at %s m agrees with ASHRAE', (elevationM) => {
    const { pressureKpaAbs, airC } = unwrap(standardAtmosphere({ elevationM }));
    const otherKpa = psychrolib.GetStandardAtmPressure(elevationM) / 1000;
    expect(Math.abs(pressureKpaAbs / otherKpa - 1)).toBeLessThan(EXPONENT_ROUNDING);
    expect(airC).toBeCloseTo(psychrolib.GetStandardAtmTemperature(elevationM), 9);
  });
});
