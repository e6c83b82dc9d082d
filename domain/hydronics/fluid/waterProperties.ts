import { celsiusToKelvin, STANDARD_ATMOSPHERE_KPA } from '../../quantity/conversions.ts';
import type { Celsius, KpaAbs } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { saturationPressureMpaAbs } from '../waterSaturation.ts';
import { if97RegionOne } from './if97RegionOne.ts';
import { waterViscosity } from './waterViscosity.ts';

/** What a heat or friction calculation needs to know of the liquid in the pipe. */
export type LiquidProperties = {
  readonly densityKgPerM3: number;
  readonly specificHeatKjPerKgK: number;
  readonly viscosityPaS: number;
};

/**
 * Density, heat capacity and viscosity of heating water.
 *
 * Formula  IF97 region 1 and IAPWS 2008 viscosity, at one atmosphere, above 100 °C at saturation: a system pressure
 *          of 1–3 bar changes the density by less than 0.01 %
 * Units    °C; kg/m³, kJ/(kg K), Pa s
 * Valid    0–120 °C; outside it an error, never a number
 * Source   IAPWS R7-97(2012) and R12-08(2008)
 * Checked  tests/checks/hydronics/waterPropertyRows.ts W1–W11
 */
export function waterProperties(at: { readonly temperatureC: Celsius }): Result<LiquidProperties, OutOfRange> {
  const refused = checkWaterTemperature(at.temperatureC);
  if (refused) return err(refused);
  const temperatureK = celsiusToKelvin(at.temperatureC);
  const saturation = saturationPressureMpaAbs(temperatureK);
  if (!saturation.ok) return saturation;
  // Kept in MPa: a detour over kPa can round to just below saturation, which region 1 refuses.
  const pressureMpaAbs = Math.max(STANDARD_ATMOSPHERE_KPA / 1000, saturation.value);
  const liquid = if97RegionOne({ temperatureK, pressureMpaAbs });
  if (!liquid.ok) return liquid;
  const viscosity = waterViscosity({ temperatureK, densityKgPerM3: liquid.value.densityKgPerM3 });
  if (!viscosity.ok) return viscosity;
  return ok({
    densityKgPerM3: liquid.value.densityKgPerM3,
    specificHeatKjPerKgK: liquid.value.specificHeatKjPerKgK,
    viscosityPaS: viscosity.value,
  });
}

/**
 * Pressure at which water of this temperature boils.
 *
 * Formula  IF97 saturation line
 * Units    °C; kPa absolute
 * Valid    0–120 °C; outside it an error, never a number
 * Source   IAPWS R7-97(2012), Eq. (30)
 * Checked  tests/checks/hydronics/waterPropertyRows.ts W1–W11
 */
export function waterVapourPressure(at: { readonly temperatureC: Celsius }): Result<KpaAbs, OutOfRange> {
  const refused = checkWaterTemperature(at.temperatureC);
  if (refused) return err(refused);
  const saturation = saturationPressureMpaAbs(celsiusToKelvin(at.temperatureC));
  return saturation.ok ? ok(saturation.value * 1000) : saturation;
}

function checkWaterTemperature(temperatureC: Celsius): OutOfRange | null {
  return checkRange('temperatureC', temperatureC, 0, 120);
}
