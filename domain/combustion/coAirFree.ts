/**
 * CO with the excess air computed away, so that two burners at different dilution can be compared.
 *
 * Formula  from O2: CO·20.9/(20.9 − O2); from CO2: CO·CO2max/CO2; from the ratio: ratio·CO2max·10⁴
 * Units    ppm dry in, ppm air-free out
 * Valid    O2 0–15 %: after burner-off O2 rises faster than CO falls, and the result climbs without meaning;
 *          CO2 3 % to CO2max + 0.5 (the reading's own error); CO 0–100 000 ppm; ratio 0–0.1
 * Errors   CO2max must be the fuel's: 11.7 against 12.0 changes the result by 2.6 %
 * Source   ANSI Z21 family and trade practice (20.9); CO2 form by mass balance
 * Checked  tests/checks/combustion/coAndNox.test.ts
 */
import type { DryVolPct, PpmAirFree, PpmDry } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { O2_IN_AIR_EPA_VOL_PCT } from './combustionConstants.ts';
import type { Fuel } from './fuel.ts';

const PPM_PER_PCT = 10_000;
const CO_MAX_PPM = 100_000;
const CO2_READING_ERROR_PCT = 0.5;

export function coAirFreeFromO2(input: {
  readonly coPpmDry: PpmDry;
  readonly o2DryVolPct: DryVolPct;
}): Result<PpmAirFree, OutOfRange> {
  const outside =
    checkRange('coPpmDry', input.coPpmDry, 0, CO_MAX_PPM) ?? checkRange('o2DryVolPct', input.o2DryVolPct, 0, 15);
  if (outside) return err(outside);
  return ok(input.coPpmDry * (O2_IN_AIR_EPA_VOL_PCT / (O2_IN_AIR_EPA_VOL_PCT - input.o2DryVolPct)));
}

export function coAirFreeFromCo2(input: {
  readonly fuel: Fuel;
  readonly coPpmDry: PpmDry;
  readonly co2DryVolPct: DryVolPct;
}): Result<PpmAirFree, OutOfRange> {
  const { co2MaxDryVolPct } = input.fuel;
  const outside =
    checkRange('coPpmDry', input.coPpmDry, 0, CO_MAX_PPM) ??
    checkRange('co2DryVolPct', input.co2DryVolPct, 3, co2MaxDryVolPct + CO2_READING_ERROR_PCT);
  if (outside) return err(outside);
  return ok((input.coPpmDry * co2MaxDryVolPct) / input.co2DryVolPct);
}

export function coAirFreeFromRatio(input: {
  readonly fuel: Fuel;
  readonly coToCo2Ratio: number;
}): Result<PpmAirFree, OutOfRange> {
  const outside = checkRange('coToCo2Ratio', input.coToCo2Ratio, 0, 0.1);
  if (outside) return err(outside);
  return ok(input.coToCo2Ratio * input.fuel.co2MaxDryVolPct * PPM_PER_PCT);
}

/** CO over CO2, both by volume: needs no fuel and does not change with dilution. */
export function coToCo2Ratio(input: {
  readonly coPpmDry: PpmDry;
  readonly co2DryVolPct: DryVolPct;
}): Result<number, OutOfRange> {
  const outside =
    checkRange('coPpmDry', input.coPpmDry, 0, CO_MAX_PPM) ?? checkRange('co2DryVolPct', input.co2DryVolPct, 3, 25);
  if (outside) return err(outside);
  return ok(input.coPpmDry / (input.co2DryVolPct * PPM_PER_PCT));
}
