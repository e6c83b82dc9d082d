/**
 * Sensible heat of the flue-gas components between two temperatures.
 *
 * Formula  Δh = R·∫(a0 + a1·T + a2·T² + a3·T³ + a4·T⁴)dT, integrated term by term
 * Units    kJ/mol; temperatures in °C
 * Valid    −40…700 °C. The polynomials are fitted from 300 K; down to 233 K cp stays within 1 % of tabulated values
 * Source   seven-coefficient NASA polynomials as distributed with the GRI-Mech 3.0 thermodynamic data, low range
 * Checked  tests/checks/combustion/gasEnthalpy.test.ts
 */
import { celsiusToKelvin } from '../quantity/conversions.ts';
import type { Celsius } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { GAS_CONSTANT_J_PER_MOL_K } from './combustionConstants.ts';

export type FlueGasComponent = 'n2' | 'o2' | 'co2' | 'water';

const CP_OVER_R: Readonly<Record<FlueGasComponent, readonly [number, number, number, number, number]>> = {
  n2: [3.298677, 1.4082404e-3, -3.963222e-6, 5.641515e-9, -2.444854e-12],
  o2: [3.78245636, -2.99673416e-3, 9.84730201e-6, -9.68129509e-9, 3.24372837e-12],
  co2: [2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13],
  water: [4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12],
};

export function enthalpyDifferenceKjPerMol(input: {
  readonly component: FlueGasComponent;
  readonly fromC: Celsius;
  readonly toC: Celsius;
}): Result<number, OutOfRange> {
  const outside = checkRange('fromC', input.fromC, -40, 700) ?? checkRange('toC', input.toC, -40, 700);
  if (outside) return err(outside);
  const fromK = celsiusToKelvin(input.fromC);
  const toK = celsiusToKelvin(input.toC);
  const integral = CP_OVER_R[input.component].reduce(
    (sum, coefficient, power) => sum + (coefficient * (toK ** (power + 1) - fromK ** (power + 1))) / (power + 1),
    0,
  );
  return ok((GAS_CONSTANT_J_PER_MOL_K * integral) / 1000);
}
