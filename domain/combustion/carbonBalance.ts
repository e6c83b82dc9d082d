/**
 * Excess-air ratio by carbon balance: the carbon of the fuel must all be found in the flue gas, as CO2 or as CO.
 *
 * Formula  n dry = C/(CO2 + CO); λ = 1 + n dry·(O2 − ½CO)/theoretical O2
 * Units    O2, CO2 in dry volume %; CO in ppm; C and theoretical O2 in mol per amount of fuel
 * Valid    CO2 3–25 %, O2 0–15 %, CO 0–100 000 ppm; λ at least 1 (O2 ≥ ½CO); no soot, no unburnt hydrocarbons;
 *          CO2 measured, not calculated from O2
 * Source   the oxygen and carbon balance worked through in "Fundamentals of Engineering Thermodynamics", Ex. 13.2, 13.3
 * Checked  tests/checks/combustion/excessAir.test.ts
 */
import type { DryVolPct, Lambda, PpmDry } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import type { Fuel } from './fuel.ts';

export function lambdaFromCarbonBalance(input: {
  readonly fuel: Fuel;
  readonly o2DryVolPct: DryVolPct;
  readonly co2DryVolPct: DryVolPct;
  readonly coPpmDry: PpmDry;
}): Result<Lambda, OutOfRange> {
  const coPct = input.coPpmDry / 10_000;
  const outside =
    checkRange('coPpmDry', input.coPpmDry, 0, 100_000) ??
    checkRange('o2DryVolPct', input.o2DryVolPct, coPct / 2, 15) ??
    checkRange('co2DryVolPct', input.co2DryVolPct, 3, 25);
  if (outside) return err(outside);
  const dryFlueMol = (100 * input.fuel.co2Mol) / (input.co2DryVolPct + coPct);
  const surplusO2Mol = (dryFlueMol * (input.o2DryVolPct - coPct / 2)) / 100;
  return ok(1 + surplusO2Mol / input.fuel.theoreticalO2Mol);
}
