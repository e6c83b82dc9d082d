/**
 * Factor from a metered volume to the volume at the base its heating value refers to.
 *
 * Formula  F = (p baro + p gauge)/p base · T base/T gas, absolute temperatures; a compensated meter has already made
 *          part of the correction: then its own reference stands in for the gas state
 * Units    kPa absolute (barometer, bases), mbar gauge (gas at the meter), °C
 * Valid    barometer 50–110 kPa; gas −5…1000 mbar gauge, −30…50 °C; bases 90–110 kPa and 0–25 °C
 * Errors   compressibility left out: negligible at low pressure. A utility heating value per METERED cubic metre at local
 *          conditions ('as-metered') must not be corrected again
 * Source   ideal gas; temperature-compensated practice from memory
 * Checked  tests/checks/gas/meterTiming.test.ts
 */
import { PA_PER_KPA, PA_PER_MBAR, ZERO_CELSIUS_K } from '../quantity/conversions.ts';
import type { Celsius, KpaAbs, MbarGauge } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

/** What the index of the meter already allows for. US dials marked TC read at 60 °F. */
export type MeterCompensation =
  | { readonly kind: 'none' }
  | { readonly kind: 'temperature'; readonly toC: Celsius }
  | { readonly kind: 'temperature-pressure'; readonly toC: Celsius; readonly toKpaAbs: KpaAbs };

/** What the cubic metre of the heating value is. */
export type HeatingValueBase =
  | { readonly kind: 'at-base'; readonly baseC: Celsius; readonly baseKpaAbs: KpaAbs }
  | { readonly kind: 'as-metered' };

export type GasAtMeter = {
  readonly barometerKpaAbs: KpaAbs;
  readonly pressureMbarG: MbarGauge;
  readonly temperatureC: Celsius;
};

export function volumeFactor(input: {
  readonly gas: GasAtMeter;
  readonly compensation: MeterCompensation;
  readonly base: HeatingValueBase;
}): Result<number, OutOfRange> {
  const { gas, compensation, base } = input;
  if (base.kind === 'as-metered') return ok(1);
  const outside =
    checkRange('barometerKpaAbs', gas.barometerKpaAbs, 50, 110) ??
    checkRange('pressureMbarG', gas.pressureMbarG, -5, 1000) ??
    checkRange('temperatureC', gas.temperatureC, -30, 50) ??
    checkBase(base.baseC, base.baseKpaAbs) ??
    (compensation.kind === 'none' ? null : checkRange('toC', compensation.toC, 0, 25)) ??
    (compensation.kind === 'temperature-pressure' ? checkRange('toKpaAbs', compensation.toKpaAbs, 90, 110) : null);
  if (outside) return err(outside);

  const indexC = compensation.kind === 'none' ? gas.temperatureC : compensation.toC;
  const indexKpaAbs =
    compensation.kind === 'temperature-pressure'
      ? compensation.toKpaAbs
      : gas.barometerKpaAbs + (gas.pressureMbarG * PA_PER_MBAR) / PA_PER_KPA;
  return ok((indexKpaAbs / base.baseKpaAbs) * ((base.baseC + ZERO_CELSIUS_K) / (indexC + ZERO_CELSIUS_K)));
}

function checkBase(baseC: Celsius, baseKpaAbs: KpaAbs): OutOfRange | null {
  return checkRange('baseC', baseC, 0, 25) ?? checkRange('baseKpaAbs', baseKpaAbs, 90, 110);
}
