import type { Kelvin, MpaAbs } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { saturationPressureMpaAbs } from '../waterSaturation.ts';

/**
 * Liquid water below its boiling point: the industrial formulation behind every density and heat capacity in this folder.
 *
 * Formula  γ(π,τ) = Σ n(7.1 − π)^I (τ − 1.222)^J with π = p/16.53 MPa, τ = 1386 K/T;
 *          v = π·γπ·R·T/p, cp = −τ²·γττ·R
 * Units    T in K, p in MPa absolute; v in m³/kg, cp in kJ/(kg K)
 * Valid    273.15 K ≤ T ≤ 623.15 K and saturation pressure ≤ p ≤ 100 MPa; outside it an error, never a number
 * Source   IAPWS R7-97(2012), Eq. (7), coefficients Table 2
 * Checked  tests/checks/hydronics/waterRows.ts W12, against Table 5 of the release
 */
export function if97RegionOne(point: {
  readonly temperatureK: Kelvin;
  readonly pressureMpaAbs: MpaAbs;
}): Result<RegionOneProperties, OutOfRange> {
  const { temperatureK, pressureMpaAbs } = point;
  const refusedTemperature = checkRange('temperatureK', temperatureK, T_MIN_K, T_MAX_K);
  if (refusedTemperature) return err(refusedTemperature);
  const saturation = saturationPressureMpaAbs(temperatureK);
  if (!saturation.ok) return saturation;
  const refusedPressure = checkRange('pressureMpaAbs', pressureMpaAbs, saturation.value, P_MAX_MPA);
  if (refusedPressure) return err(refusedPressure);

  const pi = pressureMpaAbs / P_STAR_MPA;
  const tau = T_STAR_K / temperatureK;
  const a = 7.1 - pi;
  const b = tau - 1.222;
  let gammaPi = 0;
  let gammaTauTau = 0;
  for (const [i, j, n] of TABLE_2) {
    gammaPi -= n * i * a ** (i - 1) * b ** j;
    gammaTauTau += n * a ** i * j * (j - 1) * b ** (j - 2);
  }
  // kJ/kg over MPa is 10⁻³ m³/kg
  const specificVolumeM3PerKg = (pi * gammaPi * R_KJ_PER_KG_K * temperatureK) / pressureMpaAbs / 1000;
  return ok({
    specificVolumeM3PerKg,
    densityKgPerM3: 1 / specificVolumeM3PerKg,
    specificHeatKjPerKgK: -(tau ** 2) * gammaTauTau * R_KJ_PER_KG_K,
  });
}

export type RegionOneProperties = {
  readonly specificVolumeM3PerKg: number;
  readonly densityKgPerM3: number;
  readonly specificHeatKjPerKgK: number;
};

const T_MIN_K = 273.15;
const T_MAX_K = 623.15;
const P_MAX_MPA = 100;
const T_STAR_K = 1386;
const P_STAR_MPA = 16.53;
const R_KJ_PER_KG_K = 0.461526;

/** I, J, n of Table 2, without its rows 3 and 4 (I = 0, J = 0 and 1): they set the zero of energy and drop out of v and cp. */
const TABLE_2: readonly (readonly [i: number, j: number, n: number])[] = [
  [0, -2, 0.14632971213167],
  [0, -1, -0.84548187169114],
  [0, 2, -0.95791963387872],
  [0, 3, 0.15772038513228],
  [0, 4, -0.16616417199501e-1],
  [0, 5, 0.81214629983568e-3],
  [1, -9, 0.28319080123804e-3],
  [1, -7, -0.60706301565874e-3],
  [1, -1, -0.18990068218419e-1],
  [1, 0, -0.32529748770505e-1],
  [1, 1, -0.21841717175414e-1],
  [1, 3, -0.5283835796993e-4],
  [2, -3, -0.47184321073267e-3],
  [2, 0, -0.30001780793026e-3],
  [2, 1, 0.47661393906987e-4],
  [2, 3, -0.44141845330846e-5],
  [2, 17, -0.72694996297594e-15],
  [3, -4, -0.31679644845054e-4],
  [3, 0, -0.28270797985312e-5],
  [3, 6, -0.85205128120103e-9],
  [4, -5, -0.22425281908e-5],
  [4, -2, -0.65171222895601e-6],
  [4, 10, -0.14341729937924e-12],
  [5, -8, -0.40516996860117e-6],
  [8, -11, -0.12734301741641e-8],
  [8, -6, -0.17424871230634e-9],
  [21, -29, -0.68762131295531e-18],
  [23, -31, 0.14478307828521e-19],
  [29, -38, 0.26335781662795e-22],
  [30, -39, -0.11947622640071e-22],
  [31, -40, 0.18228094581404e-23],
  [32, -41, -0.93537087292458e-25],
];
