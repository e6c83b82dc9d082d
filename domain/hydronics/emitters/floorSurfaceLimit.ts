import type { Celsius } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

export type FloorZone = 'occupied' | 'edge' | 'bathroom';

/** What North American practice allows: 85 °F. */
export const US_FLOOR_SURFACE_LIMIT_C: Celsius = (85 - 32) / 1.8;

/**
 * Highest floor **surface** temperature; the water may be hotter, but screed and timber makers set lower water limits.
 *
 * Formula  room + 9 K (occupied, bathroom) or + 15 K (edge zone up to 1 m), capped at 29, 33 and 35 °C
 * Units    °C
 * Valid    room 5–35 °C; outside it an error, never a number
 * Source   EN 1264 and ISO 11855, as printed in trade pages; sources differ on whether the figure is absolute or over the
 *          room: the lower of the two is taken
 * Checked  tests/domain/hydronics/emitters/floorSurfaceLimit.test.ts
 */
export function floorSurfaceLimit(floor: {
  readonly zone: FloorZone;
  readonly roomC: Celsius;
}): Result<Celsius, OutOfRange> {
  const refused = checkRange('roomC', floor.roomC, 5, 35);
  if (refused) return err(refused);
  const { overRoomK, capC } = LIMITS[floor.zone];
  return ok(Math.min(floor.roomC + overRoomK, capC));
}

const LIMITS: Record<FloorZone, { readonly overRoomK: number; readonly capC: Celsius }> = {
  occupied: { overRoomK: 9, capC: 29 },
  edge: { overRoomK: 15, capC: 35 },
  bathroom: { overRoomK: 9, capC: 33 },
};
