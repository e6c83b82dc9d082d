/**
 * Air a burner must find, from the input it burns.
 *
 * Formula  V = λ·air·R·T/p per amount of fuel, over HHV
 * Units    m³ per kWh (gross) and m³/h, at the temperature and pressure of the air itself
 * Valid    λ 1–4; air −40…60 °C; 50–110 kPa; input 0–10 000 kW
 * Errors   about 9.4 ft³ per 1000 Btu without excess for every gas here (rule of thumb 10); a room-air appliance also
 *          needs dilution and ventilation air, which codes set apart
 * Source   mass balance, ideal gas
 * Checked  tests/checks/combustion/condensate.test.ts (WAT-08)
 */
import { celsiusToKelvin } from '../quantity/conversions.ts';
import type { Celsius, KpaAbs, KwGross, Lambda, M3PerH } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { GAS_CONSTANT_J_PER_MOL_K } from './combustionConstants.ts';
import type { Fuel } from './fuel.ts';

type AirState = {
  readonly fuel: Fuel;
  readonly lambda: Lambda;
  readonly airC: Celsius;
  readonly pressureKpaAbs: KpaAbs;
};

export function combustionAirM3PerKwhGross(input: AirState): Result<number, OutOfRange> {
  const outside =
    checkRange('lambda', input.lambda, 1, 4) ??
    checkRange('airC', input.airC, -40, 60) ??
    checkRange('pressureKpaAbs', input.pressureKpaAbs, 50, 110);
  if (outside) return err(outside);
  const m3PerMol = (GAS_CONSTANT_J_PER_MOL_K * celsiusToKelvin(input.airC)) / (input.pressureKpaAbs * 1000);
  return ok((input.lambda * input.fuel.theoreticalAirMol * m3PerMol * 3600) / meteredHhvKj(input.fuel));
}

export function combustionAirM3PerH(input: AirState & { readonly inputKwGross: KwGross }): Result<M3PerH, OutOfRange> {
  const outside = checkRange('inputKwGross', input.inputKwGross, 0, 10_000);
  if (outside) return err(outside);
  const m3PerKwh = combustionAirM3PerKwhGross(input);
  return m3PerKwh.ok ? ok(m3PerKwh.value * input.inputKwGross) : m3PerKwh;
}

/** Gas inputs are metered and billed on heat counted at 15 °C or 60 °F, not at the 25 °C of efficiencies. */
function meteredHhvKj(fuel: Fuel): number {
  return fuel.kind === 'gas' ? fuel.hhvKjPerMol['15 °C'] : fuel.hhv25CKj;
}
