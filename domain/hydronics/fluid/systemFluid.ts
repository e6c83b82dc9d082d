import type { Celsius } from '../../quantity/units.ts';
import { assertNever, type OutOfRange, type Result } from '../../result.ts';
import type { Glycol } from './glycolKind.ts';
import { glycolProperties } from './glycolProperties.ts';
import { type LiquidProperties, waterProperties } from './waterProperties.ts';

/** What the system is filled with. A glycol share is in mass %: volume % goes through `glycolMassPct` first. */
export type SystemFluid = { readonly kind: 'water' } | { readonly kind: Glycol; readonly glycolMassPct: number };

export const WATER: SystemFluid = { kind: 'water' };

/**
 * Density, heat capacity and viscosity of whatever the system holds.
 *
 * Formula  see `waterProperties` and `glycolProperties`
 * Units    °C, mass %; kg/m³, kJ/(kg K), Pa s
 * Valid    water 0–120 °C; glycol 0–60 % mass from its freezing point to 100 °C; outside it an error, never a number
 * Source   IAPWS; IIR 2010
 * Checked  tests/checks/hydronics/
 */
export function fluidProperties(state: {
  readonly fluid: SystemFluid;
  readonly temperatureC: Celsius;
}): Result<LiquidProperties, OutOfRange> {
  const { fluid, temperatureC } = state;
  switch (fluid.kind) {
    case 'water':
      return waterProperties({ temperatureC });
    case 'propylene-glycol':
    case 'ethylene-glycol':
      return glycolProperties({ glycol: fluid.kind, glycolMassPct: fluid.glycolMassPct, temperatureC });
    default:
      return assertNever(fluid);
  }
}
