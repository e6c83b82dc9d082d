import type { Kw } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

/** What condensate usually measures; 2.9–4 is reported too. */
export const USUAL_CONDENSATE_PH: readonly [least: number, most: number] = [3.5, 5.5];

/** After a neutraliser; checked yearly. */
export const NEUTRALISED_PH: readonly [least: number, most: number] = [6.5, 10];

/** Share of the condensate ceiling that a real installation yields. Common practice, no source. */
export const REAL_CONDENSATE_SHARE: readonly [least: number, most: number] = [0.4, 0.8];

/**
 * Whether condensate of this pH may go to a public sewer by the federal floor of the United States. Many towns are
 * narrower (6–11 seen): the local sewer rule comes first.
 *
 * Formula  pH ≥ the higher of 5.0 and the local floor
 * Units    pH
 * Valid    pH 0–14; outside it an error, never an answer
 * Source   40 CFR 403.5(b), for discharges that are not domestic
 * Checked  tests/domain/water/condensate.test.ts
 */
export function meetsSewerFloor(discharge: {
  readonly outletPh: number;
  readonly localFloorPh?: number;
}): Result<boolean, OutOfRange> {
  const { outletPh, localFloorPh = FEDERAL_FLOOR_PH } = discharge;
  const refused = checkRange('outletPh', outletPh, 0, 14) ?? checkRange('localFloorPh', localFloorPh, 0, 14);
  return refused ? err(refused) : ok(outletPh >= Math.max(FEDERAL_FLOOR_PH, localFloorPh));
}

/**
 * Whether a gas boiler's condensate needs a neutraliser by German guidance.
 *
 * Formula  above 200 kW or into a septic plant: needed; else normally not, if other waste water dilutes it at least 25
 *          times and the pipes withstand acid; else needed
 * Units    kW, times of dilution
 * Valid    gas boilers, 0–100 000 kW, dilution 0–1 000 000; outside it an error, never an answer
 * Source   DWA-A 251 as quoted by a town and trade journals, which print 20–25 times: the cautious 25 is taken
 * Checked  tests/domain/water/condensate.test.ts
 */
export function neutraliserByGermanGuidance(boiler: {
  readonly outputKw: Kw;
  readonly dischargesTo: 'public-sewer' | 'septic-plant';
  readonly dilutionTimes: number;
  readonly hasAcidProofPipes: boolean;
}): Result<'needed' | 'normally-not-needed', OutOfRange> {
  const { outputKw, dischargesTo, dilutionTimes, hasAcidProofPipes } = boiler;
  const refused =
    checkRange('outputKw', outputKw, 0, 100_000) ?? checkRange('dilutionTimes', dilutionTimes, 0, 1_000_000);
  if (refused) return err(refused);
  const isExempt = outputKw <= 200 && dischargesTo === 'public-sewer' && dilutionTimes >= 25 && hasAcidProofPipes;
  return ok(isExempt ? 'normally-not-needed' : 'needed');
}

const FEDERAL_FLOOR_PH = 5;
