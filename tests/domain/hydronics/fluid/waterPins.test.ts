/**
 * The standards' formulas over their whole range here, where the published tables are thin: every coefficient counts in
 * at least one of these states.
 *
 * Source   the open Python library iapws 1.5.3, its functions for IF97 region 1 and for the IAPWS 2008 viscosity
 */
import { describe, expect, it } from 'vitest';
import { if97RegionOne } from '../../../../domain/hydronics/fluid/if97RegionOne.ts';
import { waterViscosity } from '../../../../domain/hydronics/fluid/waterViscosity.ts';
import { unwrap } from '../../../../domain/result.ts';

/** T K, p MPa, v m³/kg, cp kJ/(kg K). */
const REGION_ONE = [
  [273.16, 0.1, 1.0001557151362e-3, 4.2194012634101],
  [320, 0.2, 1.0106308405481e-3, 4.1787611483148],
  [393.15, 0.3, 1.0602695624876e-3, 4.2461115132805],
  [400, 50, 1.0404478934039e-3, 4.1454660776896],
  [500, 100, 1.112093979378e-3, 4.1921094648036],
  [600, 20, 1.4812224520702e-3, 6.1225436723106],
  [623.15, 17, 1.7270090963771e-3, 9.6869057972946],
  [623.15, 100, 1.3117600270041e-3, 4.6048121117447],
] as const;

/** T K, ρ kg/m³, μ Pa s. */
const VISCOSITY = [
  [273.15, 999.8, 1.7919461936785e-3],
  [300, 500, 5.3138340525585e-5],
  [373.15, 958.35, 2.815825542468e-4],
  [450, 1100, 2.8104723590172e-4],
  [623.15, 600, 6.9177641481955e-5],
] as const;

/** Both sides work in double precision; the sums lose a few digits. */
const DOUBLE = 1e-11;

function relativeError(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}

describe('water against an open library', () => {
  it.each(REGION_ONE)('region 1 at %s K, %s MPa', (temperatureK, pressureMpaAbs, volume, heat) => {
    const point = unwrap(if97RegionOne({ temperatureK, pressureMpaAbs }));
    expect(relativeError(point.specificVolumeM3PerKg, volume)).toBeLessThanOrEqual(DOUBLE);
    expect(relativeError(point.densityKgPerM3, 1 / volume)).toBeLessThanOrEqual(DOUBLE);
    expect(relativeError(point.specificHeatKjPerKgK, heat)).toBeLessThanOrEqual(DOUBLE);
  });

  it.each(VISCOSITY)('viscosity at %s K, %s kg/m³', (temperatureK, densityKgPerM3, viscosity) => {
    expect(relativeError(unwrap(waterViscosity({ temperatureK, densityKgPerM3 })), viscosity)).toBeLessThanOrEqual(
      DOUBLE,
    );
  });
});
