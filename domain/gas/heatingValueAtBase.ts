/**
 * A heating value per cubic metre moved from one base (temperature, pressure of the cubic metre) to another.
 *
 * Formula  H2 = H1·(p2/p1)·(T1/T2)
 * Units    MJ/m³; °C; kPa absolute
 * Valid    bases 0–25 °C and 90–110 kPa; heating value 1–200 MJ/m³
 * Errors   ideal gas: under 0.03 % off for natural gas, 0.1 % for LPG; the temperature the heat is counted at stays as it was
 * Source   ideal gas law
 * Checked  tests/checks/gas/meterTiming.test.ts
 */
import { ZERO_CELSIUS_K } from '../quantity/conversions.ts';
import type { Celsius, KpaAbs } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

export type VolumeBase = { readonly baseC: Celsius; readonly baseKpaAbs: KpaAbs };

export function heatingValueAtBase(input: {
  readonly heatingValueMjPerM3: number;
  readonly from: VolumeBase;
  readonly to: VolumeBase;
}): Result<number, OutOfRange> {
  const outside =
    checkRange('heatingValueMjPerM3', input.heatingValueMjPerM3, 1, 200) ??
    checkBase(input.from) ??
    checkBase(input.to);
  if (outside) return err(outside);
  const { from, to } = input;
  return ok(
    ((input.heatingValueMjPerM3 * to.baseKpaAbs) / from.baseKpaAbs) *
      ((from.baseC + ZERO_CELSIUS_K) / (to.baseC + ZERO_CELSIUS_K)),
  );
}

function checkBase(base: VolumeBase): OutOfRange | null {
  return checkRange('baseC', base.baseC, 0, 25) ?? checkRange('baseKpaAbs', base.baseKpaAbs, 90, 110);
}
