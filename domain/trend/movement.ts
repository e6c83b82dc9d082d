/**
 * Whether a number has moved between two visits, and how much it takes to count.
 *
 * Formula  moved when the change is larger than what practice calls a drift and than what both instruments can be off
 * Source   O₂ and CO₂ 0.5 points, CO doubled, flue 10 K, dynamic inlet pressure 10 %: general practice of a yearly service;
 *          return 3 K: the condition for comparing visits; the others from memory, no source
 * Checked  tests/domain/trend/movement.test.ts
 */
import { assertNever } from '../result.ts';
import type { TrendQuantity } from './symptoms.ts';
import type { TrendValue } from './trendValues.ts';

/** `unclear`: more than a drift, but no more than the instruments can be off, or an over-range display is one of the two. */
export type Movement = 'up' | 'down' | 'same' | 'unclear';

export type DriftLimit =
  | { readonly kind: 'by'; readonly by: number }
  | { readonly kind: 'percent'; readonly percent: number }
  /** Times this, and by at least so much: twice next to nothing is next to nothing. */
  | { readonly kind: 'times'; readonly times: number; readonly atLeast: number };

export const DRIFT_LIMITS: Readonly<Record<TrendQuantity, DriftLimit>> = {
  o2: { kind: 'by', by: 0.5 },
  co2: { kind: 'by', by: 0.5 },
  co: { kind: 'times', times: 2, atLeast: 10 },
  'flue-temperature': { kind: 'by', by: 10 },
  'flue-over-return': { kind: 'by', by: 10 },
  'dynamic-inlet-pressure': { kind: 'percent', percent: 10 },
  'all-on-inlet-pressure': { kind: 'percent', percent: 10 },
  'return-temperature': { kind: 'by', by: 3 },
  'delta-t': { kind: 'by', by: 3 },
  flow: { kind: 'percent', percent: 10 },
  output: { kind: 'percent', percent: 10 },
  'hot-water-flow': { kind: 'percent', percent: 10 },
  'hot-water-rise': { kind: 'by', by: 3 },
  'cold-pressure': { kind: 'by', by: 0.2 },
  'hot-pressure': { kind: 'by', by: 0.2 },
  'pressure-rise': { kind: 'by', by: 0.2 },
  'relief-valve-wet': { kind: 'by', by: 0.5 },
  'make-up-never-needed': { kind: 'by', by: 0.5 },
  ph: { kind: 'by', by: 0.5 },
  conductivity: { kind: 'percent', percent: 20 },
  hardness: { kind: 'by', by: 0.5 },
  'glycol-share': { kind: 'by', by: 5 },
  'neutraliser-outlet-ph': { kind: 'by', by: 0.5 },
  'condensate-volume': { kind: 'percent', percent: 20 },
};

/** Rounding of the display and of the arithmetic is no drift. */
const ROUNDING = 1e-9;

export function movementOf(before: TrendValue, now: TrendValue): Movement {
  const isUp = now.value > before.value;
  // "At least" now, against a number then, can be told when it went up; every other such pair can't.
  if (before.comparator !== '=' || now.comparator === '<' || (now.comparator === '>' && !isUp)) return 'unclear';
  if (!isDrift(DRIFT_LIMITS[now.trend], before.value, now.value)) return now.comparator === '=' ? 'same' : 'unclear';
  const isBeyondInstruments =
    now.comparator === '>' ||
    Math.abs(now.value - before.value) > Math.hypot(before.plusMinus, now.plusMinus) + ROUNDING;
  return isBeyondInstruments ? (isUp ? 'up' : 'down') : 'unclear';
}

function isDrift(limit: DriftLimit, before: number, now: number): boolean {
  const change = Math.abs(now - before);
  switch (limit.kind) {
    case 'by':
      return change > limit.by + ROUNDING;
    case 'percent':
      return change > (Math.abs(before) * limit.percent) / 100 + ROUNDING;
    case 'times': {
      const [less, more] = now > before ? [before, now] : [now, before];
      return change >= limit.atLeast - ROUNDING && more >= less * limit.times - ROUNDING;
    }
    default:
      return assertNever(limit);
  }
}
