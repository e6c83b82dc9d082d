import type { Litre, Metre } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Water in a length of tube.
 *
 * Formula  π/4·d²·L
 * Units    mm, m; L
 * Valid    inner diameter 1–1000 mm, length 0–100 000 m; outside it an error, never a number
 * Source   geometry
 * Checked  tests/checks/hydronics/volumeRows.ts V1–V4
 */
export function tubeVolume(tube: {
  readonly innerDiameterMm: number;
  readonly lengthM: Metre;
}): Result<Litre, OutOfRange> {
  const { innerDiameterMm, lengthM } = tube;
  const refused = checkRange('innerDiameterMm', innerDiameterMm, 1, 1000) ?? checkRange('lengthM', lengthM, 0, 100_000);
  if (refused) return err(refused);
  // mm²·m is 10⁻³ L
  return ok(((Math.PI / 4) * innerDiameterMm ** 2 * lengthM) / 1000);
}
