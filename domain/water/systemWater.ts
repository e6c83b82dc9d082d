import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

/**
 * How the pH of **system** water stands to what is recommended. Fill water, hot and aerated samples read wrong; system
 * water makes itself alkaline over the first 6–8 weeks, so an earlier reading is not settled.
 *
 * Formula  8.2–10.0 without aluminium, 8.2–9.0 with it; with aluminium anything outside 8.2–8.5 is a question for the
 *          boiler's maker, since sources run from 6.0 to 9.0
 * Units    pH, weeks since filling (null when unknown)
 * Valid    pH 0–14, weeks 0–10 000; outside it an error, never an answer
 * Source   VDI 2035 Part 1:2021 as quoted in a third-party manual; 8.2–8.5 is the 2009 text. The boiler's manual overrides
 * Checked  tests/domain/water/systemWater.test.ts
 */
export function systemWaterPh(sample: {
  readonly ph: number;
  readonly hasAluminium: boolean;
  readonly weeksSinceFill: number | null;
}): Result<SystemWaterPh, OutOfRange> {
  const { ph, hasAluminium, weeksSinceFill } = sample;
  const refused =
    checkRange('ph', ph, 0, 14) ??
    (weeksSinceFill === null ? null : checkRange('weeksSinceFill', weeksSinceFill, 0, 10_000));
  if (refused) return err(refused);
  const most = hasAluminium ? ALUMINIUM_MOST_PH : MOST_PH;
  return ok({
    recommended: [LEAST_PH, most],
    position: ph < LEAST_PH ? 'below' : ph > most ? 'above' : 'within',
    shouldAskMaker: hasAluminium && (ph < LEAST_PH || ph > ALUMINIUM_ASK_MAKER_ABOVE_PH),
    isSettled: weeksSinceFill === null ? null : weeksSinceFill >= SETTLING_WEEKS,
  });
}

export type SystemWaterPh = {
  readonly recommended: readonly [least: number, most: number];
  readonly position: 'below' | 'within' | 'above';
  readonly shouldAskMaker: boolean;
  /** null: the fill date is unknown. */
  readonly isSettled: boolean | null;
};

/**
 * What kind of system water a conductivity means. Inhibitors raise it; softening does not lower it.
 *
 * Formula  below 100 µS/cm low-salt, to 1500 saline, above that more than any recommendation
 * Units    µS/cm at 25 °C
 * Valid    0–100 000 µS/cm; outside it an error, never an answer
 * Source   VDI 2035 Part 1:2021 as quoted in a third-party manual; EN 14868 recommends 100 µS/cm at most when demineralised
 * Checked  tests/domain/water/systemWater.test.ts
 */
export function conductivityClass(sample: {
  readonly conductivityUsPerCm: number;
}): Result<'low-salt' | 'saline' | 'above-recommendation', OutOfRange> {
  const refused = checkRange('conductivityUsPerCm', sample.conductivityUsPerCm, 0, 100_000);
  if (refused) return err(refused);
  if (sample.conductivityUsPerCm < 100) return ok('low-salt');
  return ok(sample.conductivityUsPerCm <= 1500 ? 'saline' : 'above-recommendation');
}

const LEAST_PH = 8.2;
const MOST_PH = 10;
const ALUMINIUM_MOST_PH = 9;
const ALUMINIUM_ASK_MAKER_ABOVE_PH = 8.5;
const SETTLING_WEEKS = 6;

/** Chloride: no general figure; single makers allow 100–250 mg/L. Third-party manual and common practice. */
export const MAKERS_CHLORIDE_MG_PER_L: readonly [least: number, most: number] = [100, 250];

/** British domestic practice. BS 7593:2019, product page and trade summaries. */
export const BRITISH_DOMESTIC_TREATMENT = {
  inhibitorCheckMonths: 12,
  inhibitorRenewOrLabTestMonths: 60,
  scaleReducerAboveMgPerLCaCo3: 200,
} as const;
