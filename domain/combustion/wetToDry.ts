/**
 * Readings of a probe in the wet flue gas, brought to the dry basis of every other formula.
 *
 * Formula  dry = wet/(1 − y water); for zirconia O2 probes y follows from the fuel and the wet O2 itself:
 *          (λ − 1)·air = O2wet·(dry flue + water)/(20.946 − O2wet), O2wet in %
 * Units    volume %
 * Valid    water 0–30 %; wet O2 0–12 %, dry combustion air
 * Source   mass balance
 * Checked  tests/checks/combustion/fo.test.ts (FO-09) and excessAir.test.ts (4.2 % wet is about 5.0 % dry on gas)
 */
import type { DryVolPct } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { O2_IN_DRY_AIR_VOL_PCT } from './combustionConstants.ts';
import type { Fuel } from './fuel.ts';

export function dryFromWet(input: {
  readonly wetVolPct: number;
  readonly waterVapourVolPct: number;
}): Result<DryVolPct, OutOfRange> {
  const outside =
    checkRange('waterVapourVolPct', input.waterVapourVolPct, 0, 30) ??
    checkRange('wetVolPct', input.wetVolPct, 0, 100 - input.waterVapourVolPct);
  if (outside) return err(outside);
  return ok(input.wetVolPct / (1 - input.waterVapourVolPct / 100));
}

export function dryO2FromWetO2(input: {
  readonly fuel: Fuel;
  readonly o2WetVolPct: number;
}): Result<DryVolPct, OutOfRange> {
  const outside = checkRange('o2WetVolPct', input.o2WetVolPct, 0, 12);
  if (outside) return err(outside);
  const { fuel, o2WetVolPct } = input;
  const excessAirMol = (o2WetVolPct * (fuel.dryFlueMol + fuel.waterMol)) / (O2_IN_DRY_AIR_VOL_PCT - o2WetVolPct);
  return ok((O2_IN_DRY_AIR_VOL_PCT * excessAirMol) / (fuel.dryFlueMol + excessAirMol));
}
