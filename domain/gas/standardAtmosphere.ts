/**
 * Mean air pressure and temperature at an elevation.
 *
 * Formula  p = 101.325·(1 − 2.25577·10⁻⁵·h)^5.25588 kPa; t = 15 − 0.0065·h °C
 * Units    h in m above sea level; kPa absolute; °C
 * Valid    −500…11 000 m
 * Errors   a mean: the real barometer varies by about ±3 %. Prefer a measured STATION pressure, never the weather
 *          report's figure, which is reduced to sea level
 * Source   US Standard Atmosphere 1976
 * Checked  tests/checks/gas/altitude.test.ts; tests/domain/gas/standardAtmosphere.test.ts against a psychrometric library
 */
import { STANDARD_ATMOSPHERE_KPA } from '../quantity/conversions.ts';
import type { Celsius, KpaAbs, Metre } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

export type StandardAtmosphere = { readonly pressureKpaAbs: KpaAbs; readonly airC: Celsius };

export function standardAtmosphere(input: { readonly elevationM: Metre }): Result<StandardAtmosphere, OutOfRange> {
  const { elevationM } = input;
  const outside = checkRange('elevationM', elevationM, -500, 11_000);
  if (outside) return err(outside);
  return ok({
    pressureKpaAbs: STANDARD_ATMOSPHERE_KPA * (1 - 2.25577e-5 * elevationM) ** 5.25588,
    airC: 15 - 0.0065 * elevationM,
  });
}
