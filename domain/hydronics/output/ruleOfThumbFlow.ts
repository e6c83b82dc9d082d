import type { KelvinDifference, Kw } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Flow by the metric rule of thumb. A cross-check: about 1.6 % low at heating temperatures.
 *
 * Formula  L/h = 860·kW/ΔT
 * Units    kW, K; L/h
 * Valid    output 0–10 000 kW, ΔT 0.1–120 K; outside it an error, never a number
 * Source   common practice
 * Checked  tests/checks/hydronics/outputRows.ts Q9
 */
export function flowByMetricRule(load: {
  readonly outputKw: Kw;
  readonly deltaTK: KelvinDifference;
}): Result<number, OutOfRange> {
  const { outputKw, deltaTK } = load;
  const refused = checkRange('outputKw', outputKw, 0, 10_000) ?? checkRange('deltaTK', deltaTK, 0.1, 120);
  return refused ? err(refused) : ok((860 * outputKw) / deltaTK);
}

/**
 * Flow by the "500" rule of North America. True only near 60 °F: see `trueFlowFactor`.
 *
 * Formula  gpm = (Btu/h)/(500·ΔT°F)
 * Units    Btu/h, °F of difference; US gallons per minute
 * Valid    0–40 000 000 Btu/h, ΔT 0.2–200 °F; outside it an error, never a number
 * Source   common practice
 * Checked  tests/checks/hydronics/outputRows.ts Q10; hotWaterRows.ts D3, D4
 */
export function flowByUsRule(load: {
  readonly outputBtuPerH: number;
  readonly deltaTF: number;
}): Result<number, OutOfRange> {
  const { outputBtuPerH, deltaTF } = load;
  const refused = checkRange('outputBtuPerH', outputBtuPerH, 0, 40_000_000) ?? checkRange('deltaTF', deltaTF, 0.2, 200);
  return refused ? err(refused) : ok(outputBtuPerH / (US_RULE_FACTOR * deltaTF));
}

/**
 * Output by the same rule.
 *
 * Formula  Btu/h = 500·gpm·ΔT°F
 * Units    US gallons per minute, °F of difference; Btu/h
 * Valid    0–3000 gpm, ΔT 0–200 °F; outside it an error, never a number
 * Source   common practice
 * Checked  tests/checks/hydronics/outputRows.ts Q5, Q6
 */
export function outputByUsRule(circuit: {
  readonly flowUsGpm: number;
  readonly deltaTF: number;
}): Result<number, OutOfRange> {
  const { flowUsGpm, deltaTF } = circuit;
  const refused = checkRange('flowUsGpm', flowUsGpm, 0, 3000) ?? checkRange('deltaTF', deltaTF, 0, 200);
  return refused ? err(refused) : ok(US_RULE_FACTOR * flowUsGpm * deltaTF);
}

const US_RULE_FACTOR = 500;
