import type { Celsius } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

/** The state a reading was taken in. */
export type ReadingState = {
  readonly firing: 'high' | 'mid' | 'low';
  readonly call: 'heating' | 'hot-water';
  readonly returnC: Celsius;
};

/**
 * What keeps readings of two visits from being compared; an empty list means they may be.
 *
 * Formula  same firing point, same kind of call, return within 3 K
 * Units    °C
 * Valid    return 0–120 °C; outside it an error, never an answer
 * Source   common practice, no source
 * Checked  tests/domain/trend/visitComparability.test.ts
 */
export function visitComparability(visits: {
  readonly before: ReadingState;
  readonly after: ReadingState;
}): Result<readonly ComparabilityObstacle[], OutOfRange> {
  const { before, after } = visits;
  const refused =
    checkRange('before.returnC', before.returnC, 0, 120) ?? checkRange('after.returnC', after.returnC, 0, 120);
  if (refused) return err(refused);
  const obstacles: ComparabilityObstacle[] = [];
  if (before.firing !== after.firing) obstacles.push('other-firing-point');
  if (before.call !== after.call) obstacles.push('other-call');
  if (Math.abs(before.returnC - after.returnC) > RETURN_TOLERANCE_K) obstacles.push('other-return-temperature');
  return ok(obstacles);
}

export type ComparabilityObstacle = 'other-firing-point' | 'other-call' | 'other-return-temperature';

const RETURN_TOLERANCE_K = 3;
