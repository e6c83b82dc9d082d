import type { Kelvin } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Dynamic viscosity of liquid water, for Reynolds numbers and pipe friction.
 *
 * Formula  μ = μ0(T̄)·μ1(T̄, ρ̄)·1 µPa s, with T̄ = T/647.096 K, ρ̄ = ρ/322 kg/m³,
 *          μ0 = 100√T̄ / Σ Hi/T̄^i, μ1 = exp[ρ̄ Σi (1/T̄ − 1)^i Σj Hij(ρ̄ − 1)^j];
 *          the critical enhancement is 1 away from the critical point
 * Units    T in K, ρ in kg/m³; μ in Pa s
 * Valid    liquid: 273.15 K ≤ T ≤ 623.15 K and 500 kg/m³ ≤ ρ ≤ 1100 kg/m³ (the release reaches further)
 * Source   IAPWS R12-08(2008), Eqs. (10)–(12), Tables 1 and 2
 * Checked  tests/checks/hydronics/waterPropertyRows.ts W1–W11; tests/checks/hydronics/waterPropertyRows.ts, against Table 4 of the release
 */
export function waterViscosity(state: {
  readonly temperatureK: Kelvin;
  readonly densityKgPerM3: number;
}): Result<number, OutOfRange> {
  const { temperatureK, densityKgPerM3 } = state;
  const refused =
    checkRange('temperatureK', temperatureK, 273.15, 623.15) ?? checkRange('densityKgPerM3', densityKgPerM3, 500, 1100);
  if (refused) return err(refused);

  const reducedTemperature = temperatureK / 647.096;
  const reducedDensity = densityKgPerM3 / 322;
  let dilute = 0;
  H_I.forEach((h, i) => {
    dilute += h / reducedTemperature ** i;
  });
  let residual = 0;
  for (const [i, j, h] of H_IJ) {
    residual += h * (1 / reducedTemperature - 1) ** i * (reducedDensity - 1) ** j;
  }
  const microPascalSeconds = ((100 * Math.sqrt(reducedTemperature)) / dilute) * Math.exp(reducedDensity * residual);
  return ok(microPascalSeconds * 1e-6);
}

/** Table 1. */
const H_I: readonly number[] = [1.67752, 2.20462, 0.6366564, -0.241605];

/** Table 2: i, j, Hij. */
const H_IJ: readonly (readonly [i: number, j: number, h: number])[] = [
  [0, 0, 5.20094e-1],
  [1, 0, 8.50895e-2],
  [2, 0, -1.08374],
  [3, 0, -2.89555e-1],
  [0, 1, 2.22531e-1],
  [1, 1, 9.99115e-1],
  [2, 1, 1.88797],
  [3, 1, 1.26613],
  [5, 1, 1.20573e-1],
  [0, 2, -2.81378e-1],
  [1, 2, -9.06851e-1],
  [2, 2, -7.72479e-1],
  [3, 2, -4.89837e-1],
  [4, 2, -2.5704e-1],
  [0, 3, 1.61913e-1],
  [1, 3, 2.57399e-1],
  [0, 4, -3.25372e-2],
  [3, 4, 6.98452e-2],
  [4, 5, 8.72102e-3],
  [3, 6, -4.35673e-3],
  [5, 6, -5.93264e-4],
];
