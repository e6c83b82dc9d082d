/**
 * What an amount of fuel needs and leaves when it burns completely in dry air without excess.
 *
 * Formula  O2 = C + H/4 + S − O/2; air = O2/0.20946; water = H/2;
 *          dry flue = C + S + N/2 + air − O2; CO2max = 100·C/dry flue (SO2 not counted as CO2); k = dry flue/air
 * Units    mol of atoms in, mol out, per the same amount of fuel
 * Source   mass balance; O2 in dry air 20.946 % (AGA Report No. 8)
 * Checked  tests/checks/combustion/stoichiometry.test.ts
 */
import { O2_IN_DRY_AIR_VOL_PCT } from './combustionConstants.ts';

export type FuelAtoms = {
  readonly c: number;
  readonly h: number;
  readonly s: number;
  readonly o: number;
  readonly n: number;
};

export function stoichiometry(atoms: FuelAtoms) {
  const theoreticalO2Mol = atoms.c + atoms.h / 4 + atoms.s - atoms.o / 2;
  const theoreticalAirMol = theoreticalO2Mol / (O2_IN_DRY_AIR_VOL_PCT / 100);
  const fuelN2Mol = atoms.n / 2;
  const dryFlueMol = atoms.c + atoms.s + fuelN2Mol + theoreticalAirMol - theoreticalO2Mol;
  return {
    theoreticalO2Mol,
    theoreticalAirMol,
    co2Mol: atoms.c,
    so2Mol: atoms.s,
    fuelN2Mol,
    waterMol: atoms.h / 2,
    dryFlueMol,
    dryFlueToAirRatio: dryFlueMol / theoreticalAirMol,
    co2MaxDryVolPct: (100 * atoms.c) / dryFlueMol,
  };
}
