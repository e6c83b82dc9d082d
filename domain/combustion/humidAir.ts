/**
 * Water vapour the combustion air brings along.
 *
 * Formula  w = φ·psat(t)/(p − φ·psat(t))
 * Units    mol of vapour per mol of dry air; air in °C, pressure in kPa absolute
 * Valid    air 0–60 °C (below freezing the share is under 0.6 % and is left out: pass 0 % humidity, at any temperature); φ 0–100 %;
 *          pressure 50–110 kPa
 * Source   Dalton's law with IAPWS-IF97 saturation
 * Checked  tests/domain/combustion/humidAir.test.ts, against an ASHRAE psychrometric library
 */

import { saturationPressureMpaAbs } from '../hydronics/waterSaturation.ts';
import { celsiusToKelvin } from '../quantity/conversions.ts';
import type { Celsius, KpaAbs, Percent } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

export type MoistAir = { readonly airC: Celsius; readonly relativeHumidityPct: Percent };

export function airVapourMolPerMol(input: MoistAir & { readonly pressureKpaAbs: KpaAbs }): Result<number, OutOfRange> {
  const outside =
    checkRange('relativeHumidityPct', input.relativeHumidityPct, 0, 100) ??
    checkRange('pressureKpaAbs', input.pressureKpaAbs, 50, 110);
  if (outside) return err(outside);
  if (input.relativeHumidityPct === 0) {
    const notANumber = checkRange('airC', input.airC, null, null);
    return notANumber ? err(notANumber) : ok(0);
  }
  const frozen = checkRange('airC', input.airC, 0, 60);
  if (frozen) return err(frozen);
  const saturation = saturationPressureMpaAbs(celsiusToKelvin(input.airC));
  if (!saturation.ok) return saturation;
  const vapourKpa = (input.relativeHumidityPct / 100) * saturation.value * 1000;
  return ok(vapourKpa / (input.pressureKpaAbs - vapourKpa));
}
