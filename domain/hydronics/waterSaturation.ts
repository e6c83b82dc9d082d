/**
 * Saturation line of ordinary water: when water boils at a pressure, and when flue-gas vapour begins to condense.
 *
 * Formula  p = (2C / (−B + √(B² − 4AC)))⁴ with A, B, C quadratic in θ = T + n9/(T − n10), and its exact inverse
 * Units    T in K, p in MPa absolute
 * Valid    273.15 K ≤ T ≤ 647.096 K; 611.213 Pa ≤ p ≤ 22.064 MPa; outside it an error, never a number
 * Source   IAPWS R7-97(2012), region 4, Eqs. (29)–(31), coefficients Table 34
 * Checked  tests/checks/combustion/waterSaturation.test.ts, against Tables 35 and 36
 */
import type { Kelvin, MpaAbs } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

const T_MIN_K = 273.15;
const T_MAX_K = 647.096;
const P_MIN_MPA = 611.213e-6;
const P_MAX_MPA = 22.064;

/** Table 34, digits as in the release. */
const N1 = 0.11670521452767e4;
const N2 = -0.72421316703206e6;
const N3 = -0.17073846940092e2;
const N4 = 0.1202082470247e5;
const N5 = -0.32325550322333e7;
const N6 = 0.1491510861353e2;
const N7 = -0.48232657361591e4;
const N8 = 0.40511340542057e6;
const N9 = -0.23855557567849;
const N10 = 0.65017534844798e3;

export function saturationPressureMpaAbs(temperatureK: Kelvin): Result<MpaAbs, OutOfRange> {
  const outside = checkRange('temperatureK', temperatureK, T_MIN_K, T_MAX_K);
  if (outside) return err(outside);
  const theta = temperatureK + N9 / (temperatureK - N10);
  const a = theta ** 2 + N1 * theta + N2;
  const b = N3 * theta ** 2 + N4 * theta + N5;
  const c = N6 * theta ** 2 + N7 * theta + N8;
  return ok(((2 * c) / (-b + Math.sqrt(b ** 2 - 4 * a * c))) ** 4);
}

export function saturationTemperatureK(pressureMpaAbs: MpaAbs): Result<Kelvin, OutOfRange> {
  const outside = checkRange('pressureMpaAbs', pressureMpaAbs, P_MIN_MPA, P_MAX_MPA);
  if (outside) return err(outside);
  const beta = pressureMpaAbs ** 0.25;
  const e = beta ** 2 + N3 * beta + N6;
  const f = N1 * beta ** 2 + N4 * beta + N7;
  const g = N2 * beta ** 2 + N5 * beta + N8;
  const d = (2 * g) / (-f - Math.sqrt(f ** 2 - 4 * e * g));
  return ok((N10 + d - Math.sqrt((N10 + d) ** 2 - 4 * (N9 + N10 * d))) / 2);
}
