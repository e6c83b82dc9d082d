import { METRES_PER_FOOT, PA_PER_BAR, PA_PER_PSI, STANDARD_GRAVITY_M_PER_S2 } from '../../quantity/conversions.ts';
import type { Celsius } from '../../quantity/units.ts';
import { type OutOfRange, ok, type Result } from '../../result.ts';
import { fluidProperties, type SystemFluid } from '../fluid/systemFluid.ts';

/** Rounded up by 2 %, which is the safe side. */
export const METRIC_RULE_BAR_PER_M = 0.1;
/** 0.433 psi per foot of water. */
export const US_RULE_BAR_PER_M = (0.433 * PA_PER_PSI) / PA_PER_BAR / METRES_PER_FOOT;

/**
 * Pressure that a metre of standing water adds at the gauge.
 *
 * Formula  ρ·g
 * Units    °C; bar/m
 * Valid    the fluid's own range; outside it an error, never a number
 * Source   hydrostatics, g 9.80665 m/s²
 * Checked  tests/checks/hydronics/pressureRows.ts P1, P6
 */
export function staticGradient(column: {
  readonly fluid: SystemFluid;
  readonly temperatureC: Celsius;
}): Result<number, OutOfRange> {
  const properties = fluidProperties(column);
  if (!properties.ok) return properties;
  return ok((properties.value.densityKgPerM3 * STANDARD_GRAVITY_M_PER_S2) / PA_PER_BAR);
}
