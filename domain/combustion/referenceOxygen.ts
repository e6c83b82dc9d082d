/**
 * A concentration brought from the measured O2 to a reference O2.
 *
 * Formula  C ref = C·(base − O2 ref)/(base − O2), base 20.9 (US) or 21 (Germany, Flanders)
 * Units    any concentration (ppm, mg/m³), kept; O2 in dry volume %
 * Valid    O2 and reference O2 0–15 %; concentration 0–1 000 000
 * Errors   the two bases differ by less than 0.5 % below 8 % O2: the rule in force says which one
 * Source   US EPA Method 20 form (20.9); 1. BImSchV Annex 2 no. 2.2 (21)
 * Checked  tests/checks/combustion/coAndNox.test.ts
 */
import type { DryVolPct } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { O2_IN_AIR_EPA_VOL_PCT, O2_IN_AIR_GERMAN_VOL_PCT } from './combustionConstants.ts';

export type ReferenceOxygenBase = '20.9' | '21';

const O2_IN_AIR_PCT: Readonly<Record<ReferenceOxygenBase, DryVolPct>> = {
  '20.9': O2_IN_AIR_EPA_VOL_PCT,
  '21': O2_IN_AIR_GERMAN_VOL_PCT,
};

export function atReferenceOxygen(input: {
  readonly concentration: number;
  readonly o2DryVolPct: DryVolPct;
  readonly referenceO2DryVolPct: DryVolPct;
  readonly base: ReferenceOxygenBase;
}): Result<number, OutOfRange> {
  const outside =
    checkRange('concentration', input.concentration, 0, 1_000_000) ??
    checkRange('o2DryVolPct', input.o2DryVolPct, 0, 15) ??
    checkRange('referenceO2DryVolPct', input.referenceO2DryVolPct, 0, 15);
  if (outside) return err(outside);
  const base = O2_IN_AIR_PCT[input.base];
  return ok(input.concentration * ((base - input.referenceO2DryVolPct) / (base - input.o2DryVolPct)));
}
