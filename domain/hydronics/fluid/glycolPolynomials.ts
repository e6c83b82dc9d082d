import type { Glycol } from './glycolKind.ts';

/**
 * Coefficients for glycol–water mixtures, as data.
 *
 * Formula  f(x, t) = Σi Σj c[i][j]·(x − xm)^i·(t − tm)^j; the freezing point uses the column j = 0 alone
 * Units    x in mass %, t in °C
 * Source   Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010, as carried by the open libraries
 *          CoolProp and SecondaryCoolantProps (the same digits in both)
 * Checked  tests/checks/hydronics/glycolRows.ts
 */
export type GlycolPolynomials = {
  /** xm, mass % */
  readonly centreMassPct: number;
  /** tm, °C */
  readonly centreC: number;
  /** °C, powers of (x − xm) from 0 to 5. */
  readonly freezingPointC: readonly number[];
  readonly densityKgPerM3: PolynomialTable;
  /** J/(kg K) */
  readonly specificHeatJPerKgK: PolynomialTable;
  /** Natural logarithm of the viscosity in mPa s. */
  readonly logViscosityMilliPaS: PolynomialTable;
};

/** Row i: power of the concentration term; column j: power of the temperature term. */
export type PolynomialTable = readonly (readonly number[])[];

const PROPYLENE_GLYCOL: GlycolPolynomials = {
  centreMassPct: 30.7031,
  centreC: 32.7083,
  freezingPointC: [-1.325e1, -6.631e-1, -1.094e-2, -2.283e-4, -3.409e-6, 1.465e-8],
  densityKgPerM3: [
    [1.018e3, -5.406e-1, -2.666e-3, 1.347e-5],
    [7.604e-1, -9.45e-3, 5.541e-5, -1.343e-7],
    [-2.498e-3, 2.7e-5, -4.018e-7, 3.376e-9],
    [-1.55e-4, 2.829e-6, -7.175e-9],
    [-1.131e-6, -2.221e-8],
    [2.342e-8],
  ],
  specificHeatJPerKgK: [
    [3.882e3, 2.699, -1.659e-3, -1.032e-5],
    [-1.304e1, 5.07e-2, -4.752e-5, 1.522e-6],
    [-1.598e-1, 9.534e-5, 1.167e-5, -4.87e-8],
    [3.539e-4, 3.102e-5, -2.95e-7],
    [5.0e-5, -7.135e-7],
    [-4.959e-7],
  ],
  logViscosityMilliPaS: [
    [6.837e-1, -3.045e-2, 2.525e-4, -1.399e-6],
    [3.328e-2, -3.984e-4, 4.332e-6, -1.86e-8],
    [5.453e-5, -8.6e-8, -1.593e-8, -4.465e-11],
    [-3.9e-6, 1.054e-7, -1.589e-9],
    [-1.587e-8, 4.475e-10],
    [3.564e-9],
  ],
};

const ETHYLENE_GLYCOL: GlycolPolynomials = {
  centreMassPct: 30.8462,
  centreC: 31.728,
  freezingPointC: [-1.525e1, -8.08e-1, -1.334e-2, -7.293e-5, 1.006e-6, 1.14e-9],
  densityKgPerM3: [
    [1.034e3, -4.781e-1, -2.692e-3, 4.725e-6],
    [1.311, -6.876e-3, 4.805e-5, 1.69e-8],
    [7.49e-5, 7.855e-5, -3.995e-7, 4.982e-9],
    [-1.062e-4, 1.229e-6, -1.153e-8],
    [-9.623e-7, -7.211e-8],
    [4.891e-8],
  ],
  specificHeatJPerKgK: [
    [3.737e3, 2.93, -4.675e-3, -1.389e-5],
    [-1.799e1, 1.046e-1, -4.147e-4, 1.847e-7],
    [-9.933e-2, 3.516e-4, 5.109e-6, -7.138e-8],
    [2.61e-3, -1.189e-6, -1.643e-7],
    [1.537e-5, -4.272e-7],
    [-1.618e-6],
  ],
  logViscosityMilliPaS: [
    [4.705e-1, -2.55e-2, 1.782e-4, -7.669e-7],
    [2.471e-2, -1.171e-4, 1.052e-6, -1.634e-8],
    [3.328e-6, 1.086e-6, 1.051e-8, -6.475e-10],
    [1.659e-6, 3.157e-9, 4.063e-10],
    [3.089e-8, 1.831e-10],
    [-1.865e-9],
  ],
};

export const GLYCOL_POLYNOMIALS: Record<Glycol, GlycolPolynomials> = {
  'propylene-glycol': PROPYLENE_GLYCOL,
  'ethylene-glycol': ETHYLENE_GLYCOL,
};
