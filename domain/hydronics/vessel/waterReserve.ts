import type { Litre } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Water a vessel of this size should hold cold, so that small losses don't empty it.
 *
 * Formula  max(0.5 % of the system, 3 L); for vessels of 15 L or less, 20 % of the vessel
 * Units    L
 * Valid    system 0–1 000 000 L, vessel 0–100 000 L; outside it an error, never a number
 * Source   EN 12828, from memory. One public calculator takes 20 % of the expansion instead; 20 % of the vessel is followed
 * Checked  tests/checks/hydronics/vesselRows.ts E6–E8
 */
export function waterReserve(system: {
  readonly systemVolumeL: Litre;
  readonly vesselVolumeL: Litre;
}): Result<Litre, OutOfRange> {
  const { systemVolumeL, vesselVolumeL } = system;
  const refused =
    checkRange('systemVolumeL', systemVolumeL, 0, 1_000_000) ?? checkRange('vesselVolumeL', vesselVolumeL, 0, 100_000);
  if (refused) return err(refused);
  if (vesselVolumeL <= SMALL_VESSEL_L) return ok(0.2 * vesselVolumeL);
  return ok(Math.max(0.005 * systemVolumeL, 3));
}

const SMALL_VESSEL_L = 15;
