import type { Celsius, KelvinDifference, Kw, LPerMin } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result, unwrap } from '../../result.ts';
import { bisect } from '../bisect.ts';
import { WATER } from '../fluid/systemFluid.ts';
import { flowFromOutput } from '../output/flowFromOutput.ts';
import { heatOutput } from '../output/heatOutput.ts';

/**
 * Hot water an instantaneous heater can deliver at a rise, counted at its cold inlet. **Output**, not input.
 *
 * Formula  V̇[L/min] = 60·kW/(ρ·cp·ΔT), ρ cold, cp at the mean
 * Units    kW, °C, K; L/min
 * Valid    steady draw without a store; output 0–1000 kW, cold 0–40 °C, rise 1–90 K, hot up to 100 °C;
 *          outside it an error, never a number
 * Source   energy balance. EN 13203-1 quotes a rise of 30 K, British brochures 35 K, the DOE test 67 °F (from memory)
 * Checked  tests/checks/hydronics/hotWaterRows.ts D1, D2, D7 and the printed table
 */
export function hotWaterFlow(heater: {
  readonly outputKw: Kw;
  readonly coldC: Celsius;
  readonly riseK: KelvinDifference;
}): Result<LPerMin, OutOfRange> {
  const { outputKw, coldC, riseK } = heater;
  const refused = checkRange('riseK', riseK, 1, 90) ?? checkHeater({ outputKw, coldC, hotC: coldC + riseK });
  if (refused) return err(refused);
  return flowFromOutput({ outputKw, meterC: coldC, supplyC: coldC + riseK, returnC: coldC, fluid: WATER });
}

/**
 * Temperature rise an instantaneous heater gives to a flow: the inverse of `hotWaterFlow`.
 *
 * Formula  ΔT from V̇ = 60·kW/(ρ·cp·ΔT), by bisection, since cp hangs a little on ΔT itself
 * Units    kW, °C, L/min; K
 * Valid    as `hotWaterFlow`; an error too when the flow would have to boil or would warm by less than 1 K
 * Source   energy balance
 * Checked  inverse by property test
 */
export function hotWaterRise(heater: {
  readonly outputKw: Kw;
  readonly coldC: Celsius;
  readonly flowLPerMin: LPerMin;
}): Result<KelvinDifference, OutOfRange> {
  const { outputKw, coldC, flowLPerMin } = heater;
  const refused = checkHeater({ outputKw, coldC, hotC: coldC });
  if (refused) return err(refused);
  const largestRiseK = Math.min(90, 100 - coldC);
  const most = outputAt({ coldC, flowLPerMin, riseK: largestRiseK });
  if (!most.ok) return most;
  const least = outputAt({ coldC, flowLPerMin, riseK: 1 });
  if (!least.ok) return least;
  const refusedOutput = checkRange('outputKw', outputKw, least.value, most.value);
  if (refusedOutput) return err(refusedOutput);
  return ok(
    bisect({
      low: 1,
      high: largestRiseK,
      // Both ends have an output, so every rise between them has one too.
      isBelow: (riseK) => unwrap(outputAt({ coldC, flowLPerMin, riseK })) < outputKw,
    }),
  );
}

function outputAt(draw: { readonly coldC: Celsius; readonly flowLPerMin: LPerMin; readonly riseK: number }) {
  const { coldC, flowLPerMin, riseK } = draw;
  return heatOutput({ flowLPerMin, meterC: coldC, supplyC: coldC + riseK, returnC: coldC, fluid: WATER });
}

function checkHeater(heater: {
  readonly outputKw: Kw;
  readonly coldC: Celsius;
  readonly hotC: Celsius;
}): OutOfRange | null {
  return (
    checkRange('outputKw', heater.outputKw, 0, 1000) ??
    checkRange('coldC', heater.coldC, 0, 40) ??
    checkRange('hotC', heater.hotC, 0, 100)
  );
}
