/**
 * Excess-air ratio λ from one dry flue-gas reading.
 *
 * Formula  from O2: λ = 1 + k·O2/(20.946 − O2); from CO2: λ = 1 + k·(CO2max/CO2 − 1); excess air % = 100·(λ − 1)
 * Units    dry volume %; λ dimensionless
 * Valid    O2 0.5–15 %; CO2 from 3 % to the fuel's CO2max, on the lean side only: CO2 falls on the rich side too, so an
 *          O2 below 0.5 % or a CO above 1000 ppm beside it refuses the answer (our judgement)
 * Errors   the short form without k, O2/(20.9 − O2), overstates excess air by 1/k (31.5 instead of 28.1 % at 5 % O2)
 * Source   mass balance; agrees with the US DOE Energy Tips – Steam, Tip Sheet #4 (2006)
 * Checked  tests/checks/combustion/excessAir.test.ts
 */
import type { DryVolPct, Lambda, Percent, PpmDry } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { O2_IN_DRY_AIR_VOL_PCT } from './combustionConstants.ts';
import type { Fuel } from './fuel.ts';

const LEAN_SIDE_MIN_O2_PCT = 0.5;
const LEAN_SIDE_MAX_CO_PPM = 1000;

type FromO2 = { readonly fuel: Fuel; readonly o2DryVolPct: DryVolPct };
type FromCo2 = {
  readonly fuel: Fuel;
  readonly co2DryVolPct: DryVolPct;
  /** Read beside the CO2, where the instrument gives them: they tell whether the burner is on the lean side. */
  readonly o2DryVolPct?: DryVolPct | undefined;
  readonly coPpmDry?: PpmDry | undefined;
};

export function lambdaFromO2(input: FromO2): Result<Lambda, OutOfRange> {
  const outside = checkRange('o2DryVolPct', input.o2DryVolPct, LEAN_SIDE_MIN_O2_PCT, 15);
  if (outside) return err(outside);
  const { fuel, o2DryVolPct } = input;
  return ok(1 + (fuel.dryFlueToAirRatio * o2DryVolPct) / (O2_IN_DRY_AIR_VOL_PCT - o2DryVolPct));
}

export function lambdaFromCo2(input: FromCo2): Result<Lambda, OutOfRange> {
  const { fuel, co2DryVolPct, o2DryVolPct, coPpmDry } = input;
  const outside =
    checkRange('co2DryVolPct', co2DryVolPct, 3, fuel.co2MaxDryVolPct) ??
    (o2DryVolPct === undefined
      ? null
      : checkRange('o2DryVolPct', o2DryVolPct, LEAN_SIDE_MIN_O2_PCT, O2_IN_DRY_AIR_VOL_PCT)) ??
    (coPpmDry === undefined ? null : checkRange('coPpmDry', coPpmDry, 0, LEAN_SIDE_MAX_CO_PPM));
  if (outside) return err(outside);
  return ok(1 + fuel.dryFlueToAirRatio * (fuel.co2MaxDryVolPct / co2DryVolPct - 1));
}

export function excessAirFromO2(input: FromO2): Result<Percent, OutOfRange> {
  return asExcessAir(lambdaFromO2(input));
}

export function excessAirFromCo2(input: FromCo2): Result<Percent, OutOfRange> {
  return asExcessAir(lambdaFromCo2(input));
}

function asExcessAir(lambda: Result<Lambda, OutOfRange>): Result<Percent, OutOfRange> {
  return lambda.ok ? ok(100 * (lambda.value - 1)) : lambda;
}
