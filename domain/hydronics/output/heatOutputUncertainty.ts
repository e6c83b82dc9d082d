import type { KelvinDifference, Percent } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * How far a measured heat output can be off, from its sensors.
 *
 * Formula  √[(u1² + u2²)/ΔT² + uV²], independent errors
 * Units    K, %; ± % of the output
 * Valid    ΔT 0.1–120 K, sensors 0–20 K, flow 0–100 %; outside it an error, never a number
 * Source   root-sum-square; two ±0.3 K sensors are off by 8.5 % at 5 K, so less than 5 K gives no useful figure
 * Checked  tests/checks/hydronics/outputRows.ts Q11
 */
export function heatOutputUncertainty(measurement: {
  readonly supplySensorK: KelvinDifference;
  readonly returnSensorK: KelvinDifference;
  readonly deltaTK: KelvinDifference;
  readonly flowPct: Percent;
}): Result<{ readonly uncertaintyPct: Percent; readonly isDeltaTUseful: boolean }, OutOfRange> {
  const { supplySensorK, returnSensorK, deltaTK, flowPct } = measurement;
  const refused =
    checkRange('deltaTK', deltaTK, 0.1, 120) ??
    checkRange('supplySensorK', supplySensorK, 0, 20) ??
    checkRange('returnSensorK', returnSensorK, 0, 20) ??
    checkRange('flowPct', flowPct, 0, 100);
  if (refused) return err(refused);
  const temperaturePct = (100 * Math.hypot(supplySensorK, returnSensorK)) / deltaTK;
  return ok({
    uncertaintyPct: Math.hypot(temperaturePct, flowPct),
    isDeltaTUseful: deltaTK >= LEAST_USEFUL_DELTA_T_K,
  });
}

export const LEAST_USEFUL_DELTA_T_K = 5;
