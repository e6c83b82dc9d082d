import type { BarGauge, Metre } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { METRIC_RULE_BAR_PER_M } from './staticGradient.ts';

/**
 * Gauge pressure to fill a cold system to, so that its highest point still has the margin.
 *
 * Formula  p = h·gradient + margin; h from the gauge to the top of the highest water: not the building's height,
 *          not the pump's head. Altitude changes nothing here
 * Units    m, bar, bar/m; bar gauge
 * Valid    closed systems with water below 100 °C; h 0–200 m, margin 0–3 bar, gradient 0.09–0.12 bar/m;
 *          outside it an error, never a number
 * Source   hydrostatics; margins in `pressureCustoms.ts`
 * Checked  tests/checks/hydronics/pressureRows.ts P1–P4
 */
export function coldFillPressure(system: {
  readonly systemHeightM: Metre;
  readonly marginBar: number;
  /** The metric rule unless given: `US_RULE_BAR_PER_M`, or the exact `staticGradient`. */
  readonly gradientBarPerM?: number;
}): Result<BarGauge, OutOfRange> {
  const { systemHeightM, marginBar, gradientBarPerM = METRIC_RULE_BAR_PER_M } = system;
  const refused =
    checkRange('systemHeightM', systemHeightM, 0, 200) ??
    checkRange('marginBar', marginBar, 0, 3) ??
    checkGradient(gradientBarPerM);
  return refused ? err(refused) : ok(systemHeightM * gradientBarPerM + marginBar);
}

/**
 * Height a fill pressure can serve, the margin kept.
 *
 * Formula  h = (p − margin)/gradient
 * Units    bar gauge, bar, bar/m; m
 * Valid    pressure from the margin to 20 bar gauge; outside it an error, never a number
 * Source   inverse of `coldFillPressure`
 * Checked  tests/checks/hydronics/pressureRows.ts P5
 */
export function heightServed(fill: {
  readonly fillPressureBarG: BarGauge;
  readonly marginBar: number;
  readonly gradientBarPerM?: number;
}): Result<Metre, OutOfRange> {
  const { fillPressureBarG, marginBar, gradientBarPerM = METRIC_RULE_BAR_PER_M } = fill;
  const refused =
    checkRange('marginBar', marginBar, 0, 3) ??
    checkRange('fillPressureBarG', fillPressureBarG, marginBar, 20) ??
    checkGradient(gradientBarPerM);
  return refused ? err(refused) : ok((fillPressureBarG - marginBar) / gradientBarPerM);
}

function checkGradient(gradientBarPerM: number): OutOfRange | null {
  return checkRange('gradientBarPerM', gradientBarPerM, 0.09, 0.12);
}
