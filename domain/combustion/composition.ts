/**
 * Checks a fuel analysis before anything is computed from it: every share within 0–100 %, together 100 %.
 * A sum off by no more than the rounding of a printed analysis is scaled to 100; anything further is refused, since
 * a missing component cannot be guessed.
 */
import { err, ok, type Result } from '../result.ts';
import type { CompositionError } from './fuel.ts';

/** A dozen components printed to 0.01 % may miss 100 by this much. */
const ROUNDING_ALLOWANCE_PCT = 0.1;

/** The shares as fractions that add up to exactly one. */
export function compositionFractions<K extends string>(
  pctByComponent: Readonly<Partial<Record<K, number>>>,
): Result<ReadonlyArray<readonly [K, number]>, CompositionError> {
  const components = Object.keys(pctByComponent) as K[];
  const shares = components.map((component) => [component, pctByComponent[component] ?? 0] as const);
  for (const [component, pct] of shares) {
    if (!(pct >= 0 && pct <= 100)) return err({ code: 'composition-share-out-of-range', component, pct });
  }
  const sumPct = shares.reduce((sum, [, pct]) => sum + pct, 0);
  if (Math.abs(sumPct - 100) > ROUNDING_ALLOWANCE_PCT) return err({ code: 'composition-does-not-add-up', sumPct });
  return ok(shares.map(([component, pct]) => [component, pct / sumPct] as const));
}
