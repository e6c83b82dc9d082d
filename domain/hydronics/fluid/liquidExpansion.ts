import type { Celsius } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { fluidProperties, type SystemFluid } from './systemFluid.ts';

/**
 * How much the liquid grows from filling to full heat, as a share of the cold volume.
 *
 * Formula  e = ρcold/ρhot − 1. Never one constant coefficient: water's is 0.09e-3/K at 10 °C and 0.64e-3/K at 80 °C
 * Units    °C; share (0.0287 is 2.87 %)
 * Valid    the fluid's own range, hot not below cold; outside it an error, never a number
 * Source   definition, on IAPWS and IIR densities
 * Checked  tests/checks/hydronics/waterPropertyRows.ts W3–W11, vesselRows.ts E5, glycolRows.ts G6
 */
export function liquidExpansion(heating: {
  readonly fluid: SystemFluid;
  readonly coldC: Celsius;
  readonly hotC: Celsius;
}): Result<number, OutOfRange> {
  const { fluid, coldC, hotC } = heating;
  const cold = fluidProperties({ fluid, temperatureC: coldC });
  if (!cold.ok) return cold;
  const refused = checkRange('hotC', hotC, coldC, null);
  if (refused) return err(refused);
  const hot = fluidProperties({ fluid, temperatureC: hotC });
  if (!hot.ok) return hot;
  return ok(cold.value.densityKgPerM3 / hot.value.densityKgPerM3 - 1);
}
