import type { KelvinDifference } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Heat a warm floor gives to the room, coverings and carpets already behind it.
 *
 * Formula  q = 8.92(θs − θi)^1.1
 * Units    K between mean floor surface and room; W/m²
 * Valid    heated floors only (not walls, ceilings or cooling), 0–20 K; outside it an error, never a number
 * Source   EN 1264 base curve, as printed in trade journals
 * Checked  tests/checks/hydronics/emitterRows.ts O8, O10
 */
export function floorOutput(floor: { readonly surfaceOverRoomK: KelvinDifference }): Result<number, OutOfRange> {
  const refused = checkRange('surfaceOverRoomK', floor.surfaceOverRoomK, 0, LARGEST_DIFFERENCE_K);
  return refused ? err(refused) : ok(COEFFICIENT * floor.surfaceOverRoomK ** EXPONENT);
}

/**
 * How much warmer than the room a floor must be for an output.
 *
 * Formula  (q/8.92)^(1/1.1)
 * Units    W/m²; K
 * Valid    as `floorOutput`, 0 to 240 W/m²; outside it an error, never a number
 * Source   inverse of `floorOutput`
 * Checked  tests/checks/hydronics/emitterRows.ts O9
 */
export function floorSurfaceOverRoom(floor: { readonly outputWPerM2: number }): Result<KelvinDifference, OutOfRange> {
  const largest = COEFFICIENT * LARGEST_DIFFERENCE_K ** EXPONENT;
  const refused = checkRange('outputWPerM2', floor.outputWPerM2, 0, largest);
  return refused ? err(refused) : ok((floor.outputWPerM2 / COEFFICIENT) ** (1 / EXPONENT));
}

const COEFFICIENT = 8.92;
const EXPONENT = 1.1;
const LARGEST_DIFFERENCE_K = 20;
