/**
 * Excess air from a full flue-gas analysis with CO, without knowing the fuel: the nitrogen stands for the air.
 *
 * Formula  EA = 100·(O2 − ½CO)/(0.264·N2 − (O2 − ½CO)), N2 = 100 − CO2 − CO − O2, all in dry %
 * Units    O2, CO2 in dry volume %; CO in ppm, as instruments show it; result in %
 * Valid    O2 0–15 %, CO2 up to 21 % less O2 (all the oxygen there is), CO 0–100 000 ppm; O2 at least ½CO (below it there is no excess); fuels with little
 *          nitrogen of their own: wrong for gases like G25
 * Source   US EPA Method 3B (formula from memory)
 * Checked  tests/checks/combustion/excessAir.test.ts
 */
import type { DryVolPct, Percent, PpmDry } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { O2_IN_AIR_GERMAN_VOL_PCT } from './combustionConstants.ts';

/** O2 per N2 in air: 20.9/79.1. */
const O2_PER_N2 = 0.264;

export function excessAirFromAnalysis(input: {
  readonly o2DryVolPct: DryVolPct;
  readonly co2DryVolPct: DryVolPct;
  readonly coPpmDry: PpmDry;
}): Result<Percent, OutOfRange> {
  const coPct = input.coPpmDry / 10_000;
  const outside =
    checkRange('coPpmDry', input.coPpmDry, 0, 100_000) ??
    checkRange('o2DryVolPct', input.o2DryVolPct, coPct / 2, 15) ??
    checkRange('co2DryVolPct', input.co2DryVolPct, 0, O2_IN_AIR_GERMAN_VOL_PCT - input.o2DryVolPct);
  if (outside) return err(outside);
  const surplusO2 = input.o2DryVolPct - coPct / 2;
  const n2Pct = 100 - input.co2DryVolPct - coPct - input.o2DryVolPct;
  return ok((100 * surplusO2) / (O2_PER_N2 * n2Pct - surplusO2));
}
