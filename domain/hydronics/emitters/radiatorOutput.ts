import type { Celsius, KelvinDifference } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/** The usual exponent of a radiator; the maker's own wins. */
export const RADIATOR_EXPONENT = 1.3;

/**
 * Output of a radiator away from its rating point of 75/65 °C in a 20 °C room.
 *
 * Formula  Φ = ΦN(ΔT/ΔTN)^n: arithmetic mean over 50 K; when (return − room)/(supply − room) < 0.7, logarithmic mean
 *          over 49.83 K
 * Units    W, °C; W
 * Valid    rated output 0–1 000 000 W, supply up to 120 °C, supply above return above room by at least 0.5 K,
 *          exponent 1.0–1.5; outside it an error, never a number
 * Source   EN 442; the switch at 0.7 from memory
 * Checked  tests/checks/hydronics/emitterRows.ts O2, O3
 */
export function radiatorOutput(radiator: {
  readonly ratedOutputW: number;
  readonly supplyC: Celsius;
  readonly returnC: Celsius;
  readonly roomC: Celsius;
  readonly exponent?: number;
  /** `by-spread` unless given: the one the switch at 0.7 chooses. */
  readonly mean?: 'by-spread' | 'arithmetic' | 'logarithmic';
}): Result<number, OutOfRange> {
  const { ratedOutputW, supplyC, returnC, roomC, exponent = RADIATOR_EXPONENT, mean = 'by-spread' } = radiator;
  const refused = checkRange('ratedOutputW', ratedOutputW, 0, 1_000_000) ?? checkExponent(exponent);
  if (refused) return err(refused);
  const logarithmicK = logarithmicMeanDifference({ supplyC, returnC, roomC });
  if (!logarithmicK.ok) return logarithmicK;
  const isWideSpread = (returnC - roomC) / (supplyC - roomC) < WIDE_SPREAD_RATIO;
  const isLogarithmic = mean === 'logarithmic' || (mean === 'by-spread' && isWideSpread);
  const ratio = isLogarithmic
    ? logarithmicK.value / RATED_LOGARITHMIC_K
    : ((supplyC + returnC) / 2 - roomC) / RATED_ARITHMETIC_K;
  return ok(ratedOutputW * ratio ** exponent);
}

/**
 * Share of its rated output (ΔT 50 K) that a radiator gives at another mean difference.
 *
 * Formula  (ΔT/50)^n. British catalogues before 2003 rated at 60 K: 1.267 times as much
 * Units    K; share
 * Valid    ΔT 0–100 K, exponent 1.0–1.5; outside it an error, never a number
 * Source   EN 442
 * Checked  tests/checks/hydronics/emitterRows.ts O1
 */
export function radiatorFactor(radiator: {
  readonly meanDifferenceK: KelvinDifference;
  readonly exponent?: number;
}): Result<number, OutOfRange> {
  const { meanDifferenceK, exponent = RADIATOR_EXPONENT } = radiator;
  const refused = checkRange('meanDifferenceK', meanDifferenceK, 0, 100) ?? checkExponent(exponent);
  return refused ? err(refused) : ok((meanDifferenceK / RATED_ARITHMETIC_K) ** exponent);
}

/**
 * Logarithmic mean difference between the water and the room.
 *
 * Formula  (Ts − Tr)/ln[(Ts − Ti)/(Tr − Ti)]
 * Units    °C; K
 * Valid    room 0–40 °C, return above it by at least 0.5 K, supply above the return and up to 120 °C (equal to it: the
 *          limit of the formula, the plain difference); outside it an error, never a number
 * Source   definition
 * Checked  tests/checks/hydronics/emitterRows.ts O4
 */
export function logarithmicMeanDifference(circuit: {
  readonly supplyC: Celsius;
  readonly returnC: Celsius;
  readonly roomC: Celsius;
}): Result<KelvinDifference, OutOfRange> {
  const { supplyC, returnC, roomC } = circuit;
  const refused =
    checkRange('roomC', roomC, 0, 40) ??
    checkRange('returnC', returnC, roomC + 0.5, null) ??
    checkRange('supplyC', supplyC, returnC, 120);
  if (refused) return err(refused);
  const hotEndK = supplyC - roomC;
  const coldEndK = returnC - roomC;
  // log1p keeps the quotient accurate when both ends are nearly equal.
  const relativeSpread = (hotEndK - coldEndK) / coldEndK;
  return ok(relativeSpread === 0 ? coldEndK : (hotEndK - coldEndK) / Math.log1p(relativeSpread));
}

function checkExponent(exponent: number): OutOfRange | null {
  return checkRange('exponent', exponent, 1, 1.5);
}

const RATED_ARITHMETIC_K = 50;
/** 75/65/20 */
const RATED_LOGARITHMIC_K = 10 / Math.log(55 / 45);
const WIDE_SPREAD_RATIO = 0.7;
