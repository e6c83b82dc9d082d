/**
 * Holds a value with its uncertainty against a limit. Against a stop limit the uncertainty always counts: what could be
 * beyond is beyond. Against any other limit, what could be on either side can't be told apart from it.
 */
import type { Verdict } from '../finding.ts';

export type Bounds = {
  readonly min: number | null;
  readonly max: number | null;
  /** How close to a bound counts as near the edge; 0: only the bound itself. */
  readonly edge: number;
  readonly severity: 'outside' | 'stop';
};

export type Spread = { readonly value: number; readonly lowest: number; readonly highest: number };

export type LimitVerdict = {
  readonly verdict: Extract<
    Verdict,
    'within' | 'near-the-edge' | 'cannot-tell-apart' | 'cannot-judge' | 'outside' | 'stop'
  >;
  /** As the number stands, its uncertainty left aside. */
  readonly isNominallyInside: boolean;
};

/** A bound converted between units differs in the last digits: 27 psi is 90 % of 30 psi. */
const ROUNDING_SHARE = 1e-9;

export function againstLimit(spread: Spread, bounds: Bounds): LimitVerdict {
  const max = bounds.max === null ? Number.POSITIVE_INFINITY : bounds.max + roundingOf(bounds.max);
  const min = bounds.min === null ? Number.NEGATIVE_INFINITY : bounds.min - roundingOf(bounds.min);
  const isNominallyInside = spread.value <= max && spread.value >= min;
  const canBeBeyond = spread.highest > max || spread.lowest < min;
  if (bounds.severity === 'stop' && canBeBeyond) return { verdict: 'stop', isNominallyInside };
  if (spread.lowest > max || spread.highest < min) return { verdict: 'outside', isNominallyInside };
  if (canBeBeyond) {
    const isOpen = !Number.isFinite(spread.highest) || !Number.isFinite(spread.lowest);
    return { verdict: isOpen ? 'cannot-judge' : 'cannot-tell-apart', isNominallyInside };
  }
  const isNear =
    bounds.edge > 0 &&
    (spread.value >= max - bounds.edge - roundingOf(max) || spread.value <= min + bounds.edge + roundingOf(min));
  return { verdict: isNear ? 'near-the-edge' : 'within', isNominallyInside };
}

function roundingOf(bound: number): number {
  return Number.isFinite(bound) ? 2 * Math.abs(bound) * ROUNDING_SHARE : 0;
}
