/**
 * Heat input of an appliance from a timed meter, as an interval, on the basis (gross or net) of the heating value used.
 *
 * Formula  kW = rate·F·H/3.6 for the rate and for both ends of its interval; deviation from the rating in %
 * Units    m³/h, MJ/m³, kW
 * Valid    heating value 1–200 MJ/m³; volume factor 0.4–3; rating 0.5–10 000 kW
 * Errors   the interval holds the timing only; heating value, pressure and temperature are as good as their sources.
 *          US plates state gross input, most European plates net: compare like with like
 * Source   arithmetic
 * Checked  tests/checks/gas/meterTiming.test.ts
 */
import type { HeatBasis } from '../combustion/emissionMass.ts';
import type { Kw, Percent } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { type MeterTiming, meteredRate } from './meterTiming.ts';

export type GasInput = {
  readonly basis: HeatBasis;
  readonly inputKw: Kw;
  readonly lowestKw: Kw;
  readonly highestKw: Kw;
  readonly isLongEnough: boolean;
};

export function gasInput(input: {
  readonly timing: MeterTiming;
  readonly volumeFactor: number;
  readonly heatingValueMjPerM3: number;
  readonly basis: HeatBasis;
}): Result<GasInput, OutOfRange> {
  const outside =
    checkRange('volumeFactor', input.volumeFactor, 0.4, 3) ??
    checkRange('heatingValueMjPerM3', input.heatingValueMjPerM3, 1, 200);
  if (outside) return err(outside);
  const rate = meteredRate(input.timing);
  if (!rate.ok) return rate;
  const kwPerM3PerH = (input.volumeFactor * input.heatingValueMjPerM3) / 3.6;
  return ok({
    basis: input.basis,
    inputKw: rate.value.rateM3PerH * kwPerM3PerH,
    lowestKw: rate.value.lowestM3PerH * kwPerM3PerH,
    highestKw: rate.value.highestM3PerH * kwPerM3PerH,
    isLongEnough: rate.value.isLongEnough,
  });
}

/** The other basis; the ratio is LHV/HHV of the gas at the state the heating value was counted at. */
export function netInputFromGross(input: {
  readonly inputKwGross: number;
  readonly netToGrossRatio: number;
}): Result<Kw, OutOfRange> {
  const outside =
    checkRange('inputKwGross', input.inputKwGross, 0, 10_000) ??
    checkRange('netToGrossRatio', input.netToGrossRatio, 0.8, 1);
  return outside ? err(outside) : ok(input.inputKwGross * input.netToGrossRatio);
}

export type DeviationFromRating = {
  readonly deviationPct: Percent;
  readonly lowestPct: Percent;
  readonly highestPct: Percent;
  /** The rating lies inside the interval: the two cannot be told apart by this timing. */
  readonly isRatingInsideInterval: boolean;
};

/** Rating as it applies at the site (after any altitude rule) and on the same basis as the input. */
export function deviationFromRating(input: {
  readonly measured: GasInput;
  readonly siteRatingKw: Kw;
}): Result<DeviationFromRating, OutOfRange> {
  const { measured, siteRatingKw } = input;
  const outside = checkRange('siteRatingKw', siteRatingKw, 0.5, 10_000);
  if (outside) return err(outside);
  const deviation = (kw: number) => 100 * (kw / siteRatingKw - 1);
  return ok({
    deviationPct: deviation(measured.inputKw),
    lowestPct: deviation(measured.lowestKw),
    highestPct: deviation(measured.highestKw),
    isRatingInsideInterval: measured.lowestKw <= siteRatingKw && siteRatingKw <= measured.highestKw,
  });
}
