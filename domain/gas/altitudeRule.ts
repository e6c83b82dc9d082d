/**
 * What an appliance may burn at an elevation, by the rule its sheet states.
 *
 * Formula  per 1000 ft: 1 − pct/100·z/1000 above `fromFt`, z counted from sea level or from `fromFt` (both readings of the
 *          same sentence are in print, so the sheet must say which); bands: 1 − pct/100 inside the band
 * Units    elevation in m; rules in ft and %, as sheets print them
 * Valid    −500…6000 m; a multiplier of at least 0.3
 * Errors   rating plate and manual come first; many fan-assisted and premix boilers need no derate. A "high-altitude gas"
 *          of lower heating value may hold the derate already: apply it once
 * Source   NFPA 54/ANSI Z223.1 and the Canadian rule as appliance texts quote them
 * Checked  tests/checks/gas/altitude.test.ts, fieldCases.test.ts
 */
import { metresToFeet } from '../quantity/conversions.ts';
import type { Kw, Metre } from '../quantity/units.ts';
import { assertNever, checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

export type AltitudeRule =
  | { readonly method: 'not-on-sheet' }
  | { readonly method: 'no-derate' }
  | {
      readonly method: 'per-1000-ft';
      readonly pct: number;
      readonly fromFt: number;
      readonly countedFrom: 'sea-level' | 'threshold';
    }
  | {
      readonly method: 'bands';
      /** A band holds above its `fromFt` up to and including its `toFt`; below the lowest one nothing is taken off. */
      readonly bands: ReadonlyArray<{ readonly fromFt: number; readonly toFt: number; readonly pct: number }>;
    };

export type NoAltitudeRule =
  /** The maker has to be asked: a clocked input cannot be held against the plate. */
  | { readonly code: 'altitude-rule-not-on-sheet' }
  /** Above what the rule covers, or between its bands: the authority or the maker decides. */
  | { readonly code: 'altitude-beyond-rule'; readonly elevationFt: number };

/** The common US rule, z from sea level once above 2000 ft. */
export const US_COMMON_ALTITUDE_RULE: AltitudeRule = {
  method: 'per-1000-ft',
  pct: 4,
  fromFt: 2000,
  countedFrom: 'sea-level',
};

export const CANADA_ALTITUDE_RULE: AltitudeRule = {
  method: 'bands',
  bands: [{ fromFt: 2000, toFt: 4500, pct: 10 }],
};

/** Up to here US and Canadian practice take the plate's sea-level rating unchanged. */
const PLATE_HOLDS_UP_TO_FT = 2000;
const SMALLEST_MULTIPLIER = 0.3;
/** A threshold given in ft must not be missed through the rounding of an elevation held in m. */
const ROUNDING_FT = 0.01;

export function altitudeMultiplier(input: {
  readonly rule: AltitudeRule;
  readonly elevationM: Metre;
}): Result<number, OutOfRange | NoAltitudeRule> {
  const outside = checkRange('elevationM', input.elevationM, -500, 6000);
  if (outside) return err(outside);
  const { rule } = input;
  const elevationFt = metresToFeet(input.elevationM);
  const isAbove = (thresholdFt: number) => elevationFt > thresholdFt + ROUNDING_FT;

  switch (rule.method) {
    case 'not-on-sheet':
      return isAbove(PLATE_HOLDS_UP_TO_FT) ? err({ code: 'altitude-rule-not-on-sheet' }) : ok(1);
    case 'no-derate':
      return ok(1);
    case 'per-1000-ft': {
      if (!isAbove(Math.max(0, rule.fromFt))) return ok(1);
      const countedFt = rule.countedFrom === 'sea-level' ? elevationFt : elevationFt - rule.fromFt;
      return checkedMultiplier((rule.pct / 100) * (countedFt / 1000));
    }
    case 'bands': {
      const band = rule.bands.find(({ fromFt, toFt }) => isAbove(fromFt) && !isAbove(toFt));
      if (band) return checkedMultiplier(band.pct / 100);
      const isBelowAll = rule.bands.every(({ fromFt }) => !isAbove(fromFt));
      return isBelowAll ? ok(1) : err({ code: 'altitude-beyond-rule', elevationFt });
    }
    default:
      return assertNever(rule);
  }
}

/** The rating a clocked input at this site is held against. */
export function siteRatingKw(input: {
  readonly ratedInputKw: Kw;
  readonly rule: AltitudeRule;
  readonly elevationM: Metre;
}): Result<Kw, OutOfRange | NoAltitudeRule> {
  const outside = checkRange('ratedInputKw', input.ratedInputKw, 0.5, 10_000);
  if (outside) return err(outside);
  const multiplier = altitudeMultiplier(input);
  return multiplier.ok ? ok(input.ratedInputKw * multiplier.value) : multiplier;
}

function checkedMultiplier(reduction: number): Result<number, OutOfRange> {
  const multiplier = 1 - reduction;
  const outside = checkRange('altitudeMultiplier', multiplier, SMALLEST_MULTIPLIER, 1);
  return outside ? err(outside) : ok(multiplier);
}
