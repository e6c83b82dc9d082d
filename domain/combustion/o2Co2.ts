/**
 * The line on which dry O2 and CO2 of one fuel lie together.
 *
 * Formula  CO2 = CO2max·(20.946 − O2)/20.946, solved for any of the three
 * Units    dry volume %
 * Valid    complete combustion; O2 0–20.946 %; CO2 0–CO2max; CO2max of a pair for O2 up to 15 %
 * Errors   many analysers calculate CO2 from O2 this way: such a pair proves the fuel setting, nothing else
 * Source   dilution of the stoichiometric flue gas with air
 * Checked  tests/checks/combustion/excessAir.test.ts
 */
import type { DryVolPct } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { O2_IN_DRY_AIR_VOL_PCT } from './combustionConstants.ts';
import type { Fuel } from './fuel.ts';

export function co2FromO2(input: {
  readonly fuel: Fuel;
  readonly o2DryVolPct: DryVolPct;
}): Result<DryVolPct, OutOfRange> {
  const outside = checkRange('o2DryVolPct', input.o2DryVolPct, 0, O2_IN_DRY_AIR_VOL_PCT);
  if (outside) return err(outside);
  return ok(input.fuel.co2MaxDryVolPct * undilutedShare(input.o2DryVolPct));
}

export function o2FromCo2(input: {
  readonly fuel: Fuel;
  readonly co2DryVolPct: DryVolPct;
}): Result<DryVolPct, OutOfRange> {
  const outside = checkRange('co2DryVolPct', input.co2DryVolPct, 0, input.fuel.co2MaxDryVolPct);
  if (outside) return err(outside);
  return ok(O2_IN_DRY_AIR_VOL_PCT * (1 - input.co2DryVolPct / input.fuel.co2MaxDryVolPct));
}

/** The CO2max a pair implies: it tells which fuel the analyser was set to, not which fuel burned. */
export function co2MaxOfPair(input: {
  readonly o2DryVolPct: DryVolPct;
  readonly co2DryVolPct: DryVolPct;
}): Result<DryVolPct, OutOfRange> {
  const outside =
    checkRange('o2DryVolPct', input.o2DryVolPct, 0, 15) ?? checkRange('co2DryVolPct', input.co2DryVolPct, 0, 25);
  if (outside) return err(outside);
  return ok(input.co2DryVolPct / undilutedShare(input.o2DryVolPct));
}

function undilutedShare(o2DryVolPct: DryVolPct): number {
  return (O2_IN_DRY_AIR_VOL_PCT - o2DryVolPct) / O2_IN_DRY_AIR_VOL_PCT;
}
