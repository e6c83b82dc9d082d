/**
 * Water a condensing boiler can drain: the fuel's own water times the share that condenses.
 *
 * Formula  kg/kWh = water·18.015·10⁻³·3600/H (H in kJ, net or gross), × condensed fraction
 * Units    kg per kWh of fuel; L/h; kg per m³ of gas at a stated state; kg per kg of oil
 * Valid    condensed fraction 0–1 (`combustionEfficiency` gives it); input 0–10 000 kW
 * Errors   theoretical: field figures are lower, 0.5–0.8 of the maximum. Moisture of the combustion air is not in it
 * Source   mass balance
 * Checked  tests/checks/combustion/condensate.test.ts
 */
import type { KwGross } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { MOLAR_MASS_WATER_G_PER_MOL } from './combustionConstants.ts';
import type { HeatBasis } from './emissionMass.ts';
import type { Fuel, GasFuel, OilFuel } from './fuel.ts';
import { gasProperties } from './gasProperties.ts';
import type { ReferenceState } from './referenceState.ts';

/** Water at about 20 °C. */
const CONDENSATE_KG_PER_L = 0.998;

export function condensateKgPerKwh(input: {
  readonly fuel: Fuel;
  readonly basis: HeatBasis;
  readonly condensedFraction: number;
}): Result<number, OutOfRange> {
  const outside = checkRange('condensedFraction', input.condensedFraction, 0, 1);
  if (outside) return err(outside);
  const kjPerAmount = input.basis === 'net' ? input.fuel.lhv25CKj : input.fuel.hhv25CKj;
  return ok((waterKgPerAmount(input.fuel) * 3600 * input.condensedFraction) / kjPerAmount);
}

export function condensateLPerH(input: {
  readonly fuel: Fuel;
  readonly inputKwGross: KwGross;
  readonly condensedFraction: number;
}): Result<number, OutOfRange> {
  const outside = checkRange('inputKwGross', input.inputKwGross, 0, 10_000);
  if (outside) return err(outside);
  const kgPerKwh = condensateKgPerKwh({ ...input, basis: 'gross' });
  return kgPerKwh.ok ? ok((kgPerKwh.value * input.inputKwGross) / CONDENSATE_KG_PER_L) : kgPerKwh;
}

export function waterKgPerM3OfGas(input: {
  readonly fuel: GasFuel;
  readonly state: ReferenceState;
}): Result<number, OutOfRange> {
  const properties = gasProperties(input);
  return properties.ok ? ok(waterKgPerAmount(input.fuel) / properties.value.molarVolumeM3PerMol) : properties;
}

export function waterKgPerKgOfOil(fuel: OilFuel): number {
  return (waterKgPerAmount(fuel) / fuel.massGPerAmount) * 1000;
}

function waterKgPerAmount(fuel: Fuel): number {
  return (fuel.waterMol * MOLAR_MASS_WATER_G_PER_MOL) / 1000;
}
