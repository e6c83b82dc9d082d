import { kelvinToCelsius, STANDARD_ATMOSPHERE_KPA } from '../../quantity/conversions.ts';
import type { BarGauge, Celsius, KpaAbs } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { saturationTemperatureK } from '../waterSaturation.ts';

/**
 * Temperature at which the water at this gauge boils: how far a hot boiler is from making steam.
 *
 * Formula  saturation temperature at p = p_atm + p_gauge
 * Units    bar gauge, kPa absolute air pressure; °C
 * Valid    −0.9 to 20 bar gauge, air pressure 50–110 kPa; outside it an error, never a number
 * Source   IAPWS R7-97(2012), Eq. (31)
 * Checked  tests/checks/hydronics/waterRows.ts W15
 */
export function boilingPoint(point: {
  readonly gaugePressureBarG: BarGauge;
  readonly atmosphericPressureKpaAbs?: KpaAbs;
}): Result<Celsius, OutOfRange> {
  const { gaugePressureBarG, atmosphericPressureKpaAbs = STANDARD_ATMOSPHERE_KPA } = point;
  const refused =
    checkRange('gaugePressureBarG', gaugePressureBarG, -0.9, 20) ??
    checkRange('atmosphericPressureKpaAbs', atmosphericPressureKpaAbs, 50, 110);
  if (refused) return err(refused);
  const pressureMpaAbs = atmosphericPressureKpaAbs / 1000 + gaugePressureBarG / 10;
  const refusedAbsolute = checkRange('pressureMpaAbs', pressureMpaAbs, 0.001, null);
  if (refusedAbsolute) return err(refusedAbsolute);
  const saturation = saturationTemperatureK(pressureMpaAbs);
  return saturation.ok ? ok(kelvinToCelsius(saturation.value)) : saturation;
}
