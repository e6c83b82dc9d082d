/**
 * Water dew point of flue gas: below it the vapour of the fuel condenses.
 *
 * Formula  y = water/(water + dry flue + (λ − 1)·air), air humidity added to the water; T dew = T sat(y·p)
 * Units    °C; pressure of the site in kPa absolute
 * Valid    λ 1–4, 50–110 kPa; air as in `airVapourMolPerMol`
 * Errors   falls about 4 K per 5000 ft, so the site's own pressure is asked for; humid air raises it by 1–2 K. With
 *          sulphur in the fuel the ACID dew point lies far higher: the figure for oil is never a limit to cool down to
 * Source   IAPWS R7-97(2012) region 4; mass balance
 * Checked  tests/checks/combustion/dewPoint.test.ts
 */

import { saturationTemperatureK } from '../hydronics/waterSaturation.ts';
import { kelvinToCelsius } from '../quantity/conversions.ts';
import type { Celsius, KpaAbs, Lambda } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { combustionProducts } from './combustionProducts.ts';
import type { Fuel } from './fuel.ts';
import { airVapourMolPerMol, type MoistAir } from './humidAir.ts';

export function flueDewPointC(input: {
  readonly fuel: Fuel;
  readonly lambda: Lambda;
  readonly pressureKpaAbs: KpaAbs;
  readonly air: MoistAir;
}): Result<Celsius, OutOfRange> {
  const vapour = airVapourMolPerMol({ ...input.air, pressureKpaAbs: input.pressureKpaAbs });
  if (!vapour.ok) return vapour;
  const products = combustionProducts({
    fuel: input.fuel,
    lambda: input.lambda,
    airVapourMolPerMol: vapour.value,
  });
  if (!products.ok) return products;
  const { waterMol, dryMol } = products.value;
  return gasDewPointC({
    waterVapourMolFraction: waterMol / (waterMol + dryMol),
    pressureKpaAbs: input.pressureKpaAbs,
  });
}

/** Of any gas whose share of water vapour is known. */
export function gasDewPointC(input: {
  readonly waterVapourMolFraction: number;
  readonly pressureKpaAbs: KpaAbs;
}): Result<Celsius, OutOfRange> {
  const outside =
    checkRange('waterVapourMolFraction', input.waterVapourMolFraction, 0.013, 1) ??
    checkRange('pressureKpaAbs', input.pressureKpaAbs, 50, 110);
  if (outside) return err(outside);
  const temperature = saturationTemperatureK((input.waterVapourMolFraction * input.pressureKpaAbs) / 1000);
  return temperature.ok ? ok(kelvinToCelsius(temperature.value)) : temperature;
}
