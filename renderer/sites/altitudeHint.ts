/**
 * Says when an altitude would fit the neighbours better in the other unit: 1600 typed as metres where everybody else
 * stands at 500 m is 1600 ft. A hint, never a correction.
 */
import { METRES_PER_FOOT } from '../../domain/quantity/conversions.ts';

export type AltitudeHint = {
  readonly kind: 'feet-typed-as-metres' | 'metres-typed-as-feet';
  readonly neighbourM: number;
};

/** Common practice, no source: neighbours in one postcode or town rarely differ by more. */
const NEIGHBOURS_DIFFER_M = 150;

export function altitudeHint(altitudeM: number | null, neighboursM: readonly number[]): AltitudeHint | null {
  const neighbourM = medianOf(neighboursM);
  if (altitudeM === null || neighbourM === null || isNear(altitudeM, neighbourM)) return null;
  if (isNear(altitudeM * METRES_PER_FOOT, neighbourM)) return { kind: 'feet-typed-as-metres', neighbourM };
  if (isNear(altitudeM / METRES_PER_FOOT, neighbourM)) return { kind: 'metres-typed-as-feet', neighbourM };
  return null;
}

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) <= NEIGHBOURS_DIFFER_M;
}

function medianOf(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  const [low, high] = [sorted[Math.ceil(middle) - 1], sorted[Math.floor(middle)]];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}
