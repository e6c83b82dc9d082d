import type { Celsius } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Highest velocity in copper before the water wears it away.
 *
 * Formula  up to 30 °C (taken as cold) 2.4 m/s; up to 60 °C 1.5 m/s; hotter 0.6–0.9 m/s, of which the lower is given
 * Units    °C; m/s
 * Valid    0–120 °C; outside it an error, never a number
 * Source   copper handbook limits (8, 5, 2–3 ft/s); 30 °C as the end of "cold" is ours
 * Checked  tests/domain/hydronics/pipes/velocityLimits.test.ts
 */
export function copperErosionLimit(water: { readonly waterC: Celsius }): Result<number, OutOfRange> {
  const refused = checkRange('waterC', water.waterC, 0, 120);
  if (refused) return err(refused);
  if (water.waterC <= 30) return ok(2.4);
  return ok(water.waterC <= 60 ? 1.5 : 0.6);
}

/**
 * Highest velocity by the British table, which is kinder to hot water than the copper handbook.
 *
 * Formula  10–50 °C 3.0, up to 70 °C 2.5, up to 90 °C 2.0 m/s: a temperature between two rows takes the hotter row
 * Units    °C; m/s
 * Valid    10–90 °C; outside it an error, never a number
 * Source   BS 6700 limits as quoted on a public page
 * Checked  tests/domain/hydronics/pipes/velocityLimits.test.ts
 */
export function britishVelocityLimit(water: { readonly waterC: Celsius }): Result<number, OutOfRange> {
  const refused = checkRange('waterC', water.waterC, 10, 90);
  if (refused) return err(refused);
  if (water.waterC <= 50) return ok(3);
  return ok(water.waterC <= 70 ? 2.5 : 2);
}

/** Quiet heating pipework up to 2 in. ASHRAE, from memory. */
export const QUIET_PIPEWORK = { velocityMPerS: 1.2, lossPaPerM: [100, 400] } as const;

/** Least velocity that carries air along to its separator. Common practice, from memory. */
export const AIR_CARRYING_M_PER_S = 0.6;

/** A floor loop; the length is for 16×2 mm. Floor-heating guide. */
export const FLOOR_LOOP = { leastVelocityMPerS: 0.15, mostLossKpa: 20, mostLengthM: 120 } as const;
