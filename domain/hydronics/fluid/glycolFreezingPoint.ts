import type { Celsius } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import type { Glycol } from './glycolKind.ts';
import { GLYCOL_POLYNOMIALS } from './glycolPolynomials.ts';

/**
 * Temperature at which the first ice forms. Not the burst protection, which products state several kelvin lower.
 *
 * Formula  Σ ci·(x − xm)^i
 * Units    mass %; °C
 * Valid    0–60 % mass; outside it an error, never a number
 * Source   IIR 2010 (Melinder), coefficients in `glycolPolynomials.ts`
 * Checked  tests/checks/hydronics/glycolRows.ts G1, G2
 */
export function glycolFreezingPoint(mixture: {
  readonly glycol: Glycol;
  readonly glycolMassPct: number;
}): Result<Celsius, OutOfRange> {
  const { glycol, glycolMassPct } = mixture;
  const refused = checkRange('glycolMassPct', glycolMassPct, 0, 60);
  if (refused) return err(refused);
  const { centreMassPct, freezingPointC } = GLYCOL_POLYNOMIALS[glycol];
  return ok(
    freezingPointC.reduce((sum, coefficient, i) => sum + coefficient * (glycolMassPct - centreMassPct) ** i, 0),
  );
}
