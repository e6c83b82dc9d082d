/**
 * What leaves the burner, in moles per amount of fuel (1 mol of gas, 1 kg of oil), at a given excess-air ratio.
 *
 * Formula  O2 = (λ − 1)·theoretical O2; N2 = fuel N2 + (1 − 0.20946)·λ·air; water = fuel water + w·λ·air
 * Units    mol; w = mol of water vapour per mol of dry combustion air
 * Valid    λ 1–4 (a burner on the rich side leaves CO and H2, which this does not describe); w 0–0.25
 * Source   mass balance
 * Checked  tests/checks/combustion/excessAir.test.ts (dry O2 and CO2 at 20 % excess air, boiler handbook)
 */
import type { DryVolPct, Lambda } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { O2_IN_DRY_AIR_VOL_PCT } from './combustionConstants.ts';
import type { Fuel } from './fuel.ts';

export type CombustionProducts = {
  readonly co2Mol: number;
  readonly so2Mol: number;
  readonly o2Mol: number;
  readonly n2Mol: number;
  readonly waterMol: number;
  readonly dryMol: number;
  readonly o2DryVolPct: DryVolPct;
  readonly co2DryVolPct: DryVolPct;
};

export function combustionProducts(input: {
  readonly fuel: Fuel;
  readonly lambda: Lambda;
  readonly airVapourMolPerMol: number;
}): Result<CombustionProducts, OutOfRange> {
  const outside =
    checkRange('lambda', input.lambda, 1, 4) ?? checkRange('airVapourMolPerMol', input.airVapourMolPerMol, 0, 0.25);
  if (outside) return err(outside);

  const { fuel } = input;
  const airMol = input.lambda * fuel.theoreticalAirMol;
  const o2Mol = (input.lambda - 1) * fuel.theoreticalO2Mol;
  const n2Mol = fuel.fuelN2Mol + airMol * (1 - O2_IN_DRY_AIR_VOL_PCT / 100);
  const dryMol = fuel.co2Mol + fuel.so2Mol + o2Mol + n2Mol;
  return ok({
    co2Mol: fuel.co2Mol,
    so2Mol: fuel.so2Mol,
    o2Mol,
    n2Mol,
    waterMol: fuel.waterMol + input.airVapourMolPerMol * airMol,
    dryMol,
    o2DryVolPct: (100 * o2Mol) / dryMol,
    co2DryVolPct: (100 * fuel.co2Mol) / dryMol,
  });
}
