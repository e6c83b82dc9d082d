/**
 * Heating value, relative density and Wobbe index of a gas per cubic metre at a stated reference state.
 *
 * Formula  Z = 1 − s²; Vm = Z·R·T2/p2; Hs = Hs,molar/Vm; Hi = Hi,molar/Vm; d = (M/M air)·(Z air/Z); W = H/√d
 * Units    MJ/m³; p2 in kPa absolute
 * Valid    p2 90–110 kPa (s is given for 101.325 kPa and small departures from it); ideal metering 0–30 °C
 * Source   ISO 6976:2016 clauses 5, 8, 9 and 10
 * Checked  tests/checks/combustion/heatingValue.test.ts, against EN 437 and AGA Report No. 8
 */
import { STANDARD_ATMOSPHERE_KPA } from '../quantity/conversions.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { GAS_CONSTANT_J_PER_MOL_K, MOLAR_MASS_DRY_AIR_G_PER_MOL } from './combustionConstants.ts';
import type { GasFuel } from './fuel.ts';
import { COMPRESSIBILITY_OF_DRY_AIR } from './gasComponents.ts';
import { meteringTemperatureK, type ReferenceState } from './referenceState.ts';

export type GasProperties = {
  readonly hhvMjPerM3: number;
  readonly lhvMjPerM3: number;
  readonly relativeDensity: number;
  readonly wobbeGrossMjPerM3: number;
  readonly wobbeNetMjPerM3: number;
  readonly molarVolumeM3PerMol: number;
};

export function gasProperties(input: {
  readonly fuel: GasFuel;
  readonly state: ReferenceState;
}): Result<GasProperties, OutOfRange> {
  const { fuel, state } = input;
  const { metering } = state;
  const outside =
    checkRange('pressureKpaAbs', state.pressureKpaAbs, 90, 110) ??
    (metering.kind === 'ideal-gas' ? checkRange('temperatureC', metering.temperatureC, 0, 30) : null);
  if (outside) return err(outside);

  const compressibility = compressibilityOf(fuel, state);
  const compressibilityOfAir =
    metering.kind === 'real-gas'
      ? 1 - ((1 - COMPRESSIBILITY_OF_DRY_AIR[metering.temperature]) * state.pressureKpaAbs) / STANDARD_ATMOSPHERE_KPA
      : 1;
  const molarVolumeM3PerMol =
    (compressibility * GAS_CONSTANT_J_PER_MOL_K * meteringTemperatureK(metering)) / (state.pressureKpaAbs * 1000);
  const relativeDensity =
    fuel.suppliedRelativeDensity ??
    (fuel.massGPerAmount / MOLAR_MASS_DRY_AIR_G_PER_MOL) * (compressibilityOfAir / compressibility);
  const hhvMjPerM3 = fuel.hhvKjPerMol[state.combustionTemperature] / 1000 / molarVolumeM3PerMol;
  const lhvMjPerM3 = fuel.lhvKjPerMol[state.combustionTemperature] / 1000 / molarVolumeM3PerMol;
  return ok({
    hhvMjPerM3,
    lhvMjPerM3,
    relativeDensity,
    wobbeGrossMjPerM3: hhvMjPerM3 / Math.sqrt(relativeDensity),
    wobbeNetMjPerM3: lhvMjPerM3 / Math.sqrt(relativeDensity),
    molarVolumeM3PerMol,
  });
}

/** The departure from 1 grows in proportion to the pressure; s is tabulated for 101.325 kPa. */
function compressibilityOf(fuel: GasFuel, state: ReferenceState): number {
  if (state.metering.kind === 'ideal-gas') return 1;
  const departure = fuel.summationFactor[state.metering.temperature] ** 2;
  return 1 - (departure * state.pressureKpaAbs) / STANDARD_ATMOSPHERE_KPA;
}
