import type { Celsius, Kw, LPerMin } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import type { SystemFluid } from '../fluid/systemFluid.ts';
import { heatPerLitreKelvin } from './heatOutput.ts';

/**
 * Flow a circuit must have to carry a load at its two temperatures; between two visits, the flow its ΔT betrays.
 *
 * Formula  V̇ = 60·Q / [ρ(at the meter)·cp(mean)·(supply − return)]
 * Units    kW, °C; L/min
 * Valid    output 0–10 000 kW, difference from 0.1 K, the fluid's own range; outside it an error, never a number
 * Source   energy balance
 * Checked  tests/checks/hydronics/outputRows.ts Q9, Q10; tests/checks/hydronics/trendRows.ts M1
 */
export function flowFromOutput(load: {
  readonly outputKw: Kw;
  readonly meterC: Celsius;
  readonly supplyC: Celsius;
  readonly returnC: Celsius;
  readonly fluid: SystemFluid;
}): Result<LPerMin, OutOfRange> {
  const { outputKw, meterC, supplyC, returnC, fluid } = load;
  const refused =
    checkRange('outputKw', outputKw, 0, 10_000) ?? checkRange('supplyMinusReturnK', supplyC - returnC, 0.1, null);
  if (refused) return err(refused);
  const heatPerLitre = heatPerLitreKelvin({ meterC, meanC: (supplyC + returnC) / 2, fluid });
  if (!heatPerLitre.ok) return heatPerLitre;
  return ok((60 * outputKw) / (heatPerLitre.value * (supplyC - returnC)));
}
