import type { Celsius } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

/** The state a reading was taken in. */
export type ReadingState = {
  /** Key of the firing point. */
  readonly firing: string;
  /** null: not written down. */
  readonly call: 'heating' | 'hot-water' | null;
  /** null: not read. */
  readonly returnC: Celsius | null;
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
  const refused = checkReturn('before.returnC', before.returnC) ?? checkReturn('after.returnC', after.returnC);
  if (refused) return err(refused);
  const obstacles: ComparabilityObstacle[] = [];
  if (before.firing !== after.firing) obstacles.push('other-firing-point');
  if (before.call !== null && after.call !== null && before.call !== after.call) obstacles.push('other-call');
  if (before.returnC === null || after.returnC === null) obstacles.push('return-not-read');
  else if (Math.abs(before.returnC - after.returnC) > RETURN_TOLERANCE_K) obstacles.push('other-return-temperature');
  return ok(obstacles);
}

export type ComparabilityObstacle =
  | 'other-firing-point'
  | 'other-call'
  | 'other-return-temperature'
  | 'return-not-read';

const RETURN_TOLERANCE_K = 3;

function checkReturn(name: string, returnC: Celsius | null): OutOfRange | null {
  return returnC === null ? null : checkRange(name, returnC, 0, 120);
}
