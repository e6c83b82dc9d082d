import { FAHRENHEIT_DEGREES_PER_KELVIN, KJ_PER_BTU, LITRES_PER_US_GALLON } from '../../quantity/conversions.ts';
import type { Celsius } from '../../quantity/units.ts';
import { type OutOfRange, ok, type Result } from '../../result.ts';
import type { SystemFluid } from '../fluid/systemFluid.ts';
import { heatPerLitreKelvin } from './heatOutput.ts';

/**
 * What the "500" of the North American rule really is at this temperature and in this fluid.
 *
 * Formula  k = 60·ρ[lb/gal]·cp[Btu/(lb °F)], so that Btu/h = k·gpm·ΔT°F
 * Units    °C; Btu/h per US gpm and °F
 * Valid    the fluid's own range; outside it an error, never a number
 * Source   definition, properties from IAPWS and IIR 2010
 * Checked  tests/checks/hydronics/outputRows.ts Q7, Q8
 */
export function trueFlowFactor(state: {
  readonly fluid: SystemFluid;
  readonly temperatureC: Celsius;
}): Result<number, OutOfRange> {
  const { fluid, temperatureC } = state;
  const heatPerLitre = heatPerLitreKelvin({ fluid, meterC: temperatureC, meanC: temperatureC });
  if (!heatPerLitre.ok) return heatPerLitre;
  const kjPerGallonKelvin = heatPerLitre.value * LITRES_PER_US_GALLON;
  return ok((60 * kjPerGallonKelvin) / (KJ_PER_BTU * FAHRENHEIT_DEGREES_PER_KELVIN));
}
