import type { Celsius } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { glycolFreezingPoint } from './glycolFreezingPoint.ts';
import type { Glycol } from './glycolKind.ts';
import { GLYCOL_POLYNOMIALS, type PolynomialTable } from './glycolPolynomials.ts';
import type { LiquidProperties } from './waterProperties.ts';

/** Beyond this the polynomials run on past their open test data: allow ±1 %. */
export const GLYCOL_TEST_DATA_END_C = 40;

/**
 * Density, heat capacity and viscosity of glycol and water, without inhibitors: the product's own sheet comes first.
 *
 * Formula  double polynomials in concentration and temperature; the logarithm of the viscosity is the polynomial
 * Units    mass %, °C; kg/m³, kJ/(kg K), Pa s
 * Valid    0–60 % mass, freezing point to 100 °C; above 40 °C the open test data end (`isExtrapolated`, ±1 %)
 * Source   IIR 2010 (Melinder), coefficients in `glycolPolynomials.ts`
 * Checked  tests/checks/hydronics/glycolRows.ts
 */
export function glycolProperties(state: {
  readonly glycol: Glycol;
  readonly glycolMassPct: number;
  readonly temperatureC: Celsius;
}): Result<GlycolProperties, OutOfRange> {
  const { glycol, glycolMassPct, temperatureC } = state;
  const freezing = glycolFreezingPoint({ glycol, glycolMassPct });
  if (!freezing.ok) return freezing;
  const refused = checkRange('temperatureC', temperatureC, freezing.value, 100);
  if (refused) return err(refused);

  const polynomials = GLYCOL_POLYNOMIALS[glycol];
  const x = glycolMassPct - polynomials.centreMassPct;
  const t = temperatureC - polynomials.centreC;
  return ok({
    densityKgPerM3: evaluate(polynomials.densityKgPerM3, x, t),
    specificHeatKjPerKgK: evaluate(polynomials.specificHeatJPerKgK, x, t) / 1000,
    viscosityPaS: Math.exp(evaluate(polynomials.logViscosityMilliPaS, x, t)) / 1000,
    isExtrapolated: temperatureC > GLYCOL_TEST_DATA_END_C,
  });
}

export type GlycolProperties = LiquidProperties & { readonly isExtrapolated: boolean };

function evaluate(table: PolynomialTable, x: number, t: number): number {
  let sum = 0;
  table.forEach((row, i) => {
    row.forEach((coefficient, j) => {
      sum += coefficient * x ** i * t ** j;
    });
  });
  return sum;
}
