import type { Celsius, KpaAbs } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Water density by a short fit, for curves drawn point by point where IF97 would be slow.
 *
 * Formula  ρ = (999.83952 + 16.945176t − 7.9870401e-3t² − 46.170461e-6t³ + 105.56302e-9t⁴ − 280.54253e-12t⁵) /
 *          (1 + 16.87985e-3t)
 * Units    °C; kg/m³
 * Valid    0–100 °C, within 0.012 kg/m³ of IF97
 * Source   coefficients of Kell's 1975 fit, from memory; accuracy verified against IF97
 * Checked  tests/checks/hydronics/waterRows.ts W14
 */
export function waterDensityFit(at: { readonly temperatureC: Celsius }): Result<number, OutOfRange> {
  const t = at.temperatureC;
  const refused = checkFitRange(t);
  if (refused) return err(refused);
  const numerator =
    999.83952 +
    16.945176 * t -
    7.9870401e-3 * t ** 2 -
    46.170461e-6 * t ** 3 +
    105.56302e-9 * t ** 4 -
    280.54253e-12 * t ** 5;
  return ok(numerator / (1 + 16.87985e-3 * t));
}

/**
 * Heat capacity of water by a short fit.
 *
 * Formula  cp = 4.2182 − 0.3022x + 0.9143x² − 1.4432x³ + 1.2354x⁴ − 0.4064x⁵, x = t/100
 * Units    °C; kJ/(kg K)
 * Valid    0–100 °C, within 0.0008 kJ/(kg K) of IF97 from 1 °C up, within 0.0013 below that
 * Source   fitted to IF97
 * Checked  tests/domain/hydronics/fluid/waterFits.test.ts, against IF97
 */
export function waterSpecificHeatFit(at: { readonly temperatureC: Celsius }): Result<number, OutOfRange> {
  const refused = checkFitRange(at.temperatureC);
  if (refused) return err(refused);
  const x = at.temperatureC / 100;
  return ok(4.2182 - 0.3022 * x + 0.9143 * x ** 2 - 1.4432 * x ** 3 + 1.2354 * x ** 4 - 0.4064 * x ** 5);
}

/**
 * Vapour pressure of water by a short fit.
 *
 * Formula  pv = 0.61121·exp[(18.678 − t/234.5)·t/(257.14 + t)]
 * Units    °C; kPa absolute
 * Valid    0–100 °C, within 0.11 % of IF97
 * Source   Buck's 1996 coefficients, from memory; accuracy verified against IF97
 * Checked  tests/checks/hydronics/waterRows.ts W14
 */
export function waterVapourPressureFit(at: { readonly temperatureC: Celsius }): Result<KpaAbs, OutOfRange> {
  const t = at.temperatureC;
  const refused = checkFitRange(t);
  if (refused) return err(refused);
  return ok(0.61121 * Math.exp(((18.678 - t / 234.5) * t) / (257.14 + t)));
}

function checkFitRange(temperatureC: Celsius): OutOfRange | null {
  return checkRange('temperatureC', temperatureC, 0, 100);
}
