/**
 * CO and NOx as mass: per cubic metre of flue gas and per kilowatt-hour of fuel.
 *
 * Formula  mg/m³ = ppm·M/Vm; mg/kWh = mg/m³ at 0 % O2 × dry flue m³ per kWh; to 0 % O2: × 20.946/(20.946 − O2)
 * Units    ppm dry; mg per normal m³ (0 °C, 101.325 kPa) or per m³ at 20 °C; mg per kWh of fuel, net (LHV) or gross (HHV)
 * Valid    ppm 0–100 000; O2 0–15 %; heat basis 25 °C
 * Errors   net and gross differ by 11 % on natural gas: the basis is part of the number; NOx is booked as NO2
 * Source   composition; agrees with EN 483/EN 15502 factors (from memory) and the Flemish oil factor
 * Checked  tests/checks/combustion/coAndNox.test.ts
 */
import { STANDARD_ATMOSPHERE_KPA, ZERO_CELSIUS_K } from '../quantity/conversions.ts';
import type { DryVolPct, PpmDry } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import {
  GAS_CONSTANT_J_PER_MOL_K,
  MOLAR_MASS_CO_G_PER_MOL,
  MOLAR_MASS_NO2_G_PER_MOL,
  NORMAL_MOLAR_VOLUME_M3_PER_MOL,
  O2_IN_DRY_AIR_VOL_PCT,
} from './combustionConstants.ts';
import type { Fuel } from './fuel.ts';

export type Pollutant = 'co' | 'nox';
/** Net counts the fuel's lower heating value, gross the higher. */
export type HeatBasis = 'net' | 'gross';
export type VolumeTemperature = '0 °C' | '20 °C';

const MOLAR_MASS_G_PER_MOL: Readonly<Record<Pollutant, number>> = {
  co: MOLAR_MASS_CO_G_PER_MOL,
  nox: MOLAR_MASS_NO2_G_PER_MOL,
};
const VOLUME_TEMPERATURE_C: Readonly<Record<VolumeTemperature, number>> = { '0 °C': 0, '20 °C': 20 };
/** Instruments with an NO cell only: NO2 adds about 5 % (common practice, from memory). */
const NOX_PER_NO = 1.05;

export function mgPerM3FromPpm(input: {
  readonly pollutant: Pollutant;
  readonly ppmDry: PpmDry;
  readonly volumeAt: VolumeTemperature;
}): Result<number, OutOfRange> {
  const outside = checkPpm(input.ppmDry);
  if (outside) return err(outside);
  const temperatureK = VOLUME_TEMPERATURE_C[input.volumeAt] + ZERO_CELSIUS_K;
  const litrePerMol = (GAS_CONSTANT_J_PER_MOL_K * temperatureK) / STANDARD_ATMOSPHERE_KPA;
  return ok((input.ppmDry * MOLAR_MASS_G_PER_MOL[input.pollutant]) / litrePerMol);
}

/** Dry flue gas without excess air, in normal m³ per kWh of fuel. */
export function dryFlueM3PerKwh(input: { readonly fuel: Fuel; readonly basis: HeatBasis }): number {
  const kjPerAmount = input.basis === 'net' ? input.fuel.lhv25CKj : input.fuel.hhv25CKj;
  return (input.fuel.dryFlueMol * NORMAL_MOLAR_VOLUME_M3_PER_MOL * 3600) / kjPerAmount;
}

type AtO2 = {
  readonly fuel: Fuel;
  readonly pollutant: Pollutant;
  readonly o2DryVolPct: DryVolPct;
  readonly basis: HeatBasis;
};

export function mgPerKwhFromPpm(input: AtO2 & { readonly ppmDry: PpmDry }): Result<number, OutOfRange> {
  const outside = checkPpm(input.ppmDry) ?? checkRange('o2DryVolPct', input.o2DryVolPct, 0, 15);
  if (outside) return err(outside);
  return ok(input.ppmDry * mgPerKwhPerPpm(input));
}

export function ppmFromMgPerKwh(input: AtO2 & { readonly mgPerKwh: number }): Result<PpmDry, OutOfRange> {
  const outside =
    checkRange('mgPerKwh', input.mgPerKwh, 0, 100_000) ?? checkRange('o2DryVolPct', input.o2DryVolPct, 0, 15);
  if (outside) return err(outside);
  return ok(input.mgPerKwh / mgPerKwhPerPpm(input));
}

export function noxPpmFromNoPpm(noPpmDry: PpmDry): Result<PpmDry, OutOfRange> {
  const outside = checkPpm(noPpmDry);
  return outside ? err(outside) : ok(noPpmDry * NOX_PER_NO);
}

function mgPerKwhPerPpm(input: AtO2): number {
  const mgPerM3PerPpm = MOLAR_MASS_G_PER_MOL[input.pollutant] / (NORMAL_MOLAR_VOLUME_M3_PER_MOL * 1000);
  const undiluting = O2_IN_DRY_AIR_VOL_PCT / (O2_IN_DRY_AIR_VOL_PCT - input.o2DryVolPct);
  return mgPerM3PerPpm * dryFlueM3PerKwh(input) * undiluting;
}

function checkPpm(ppmDry: PpmDry): OutOfRange | null {
  return checkRange('ppmDry', ppmDry, 0, 100_000);
}
