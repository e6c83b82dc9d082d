import type { Celsius, Kw, LPerMin } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { fluidProperties, type SystemFluid } from '../fluid/systemFluid.ts';

/**
 * Heat carried by a circuit, from its flow and its two temperatures.
 *
 * Formula  Q = V̇/60 000 · ρ(at the meter) · cp(mean of supply and return) · (supply − return)
 * Units    L/min, °C; kW
 * Valid    liquid, steady, full pipe; flow 0–10 000 L/min, supply not below return; outside it an error, never a number.
 *          Below 5 K of difference the result is no useful figure: see `heatOutputUncertainty`
 * Source   energy balance, properties from IAPWS and IIR 2010
 * Checked  tests/checks/hydronics/outputRows.ts Q1, Q3–Q6; hotWaterRows.ts D6
 */
export function heatOutput(circuit: {
  readonly flowLPerMin: LPerMin;
  /** Where the flow is measured: a meter in the return counts denser litres than one in the supply, by about 1 %. */
  readonly meterC: Celsius;
  readonly supplyC: Celsius;
  readonly returnC: Celsius;
  readonly fluid: SystemFluid;
}): Result<Kw, OutOfRange> {
  const { flowLPerMin, meterC, supplyC, returnC, fluid } = circuit;
  const refused =
    checkRange('flowLPerMin', flowLPerMin, 0, 10_000) ?? checkRange('supplyMinusReturnK', supplyC - returnC, 0, null);
  if (refused) return err(refused);
  const heatPerLitre = heatPerLitreKelvin({ meterC, meanC: (supplyC + returnC) / 2, fluid });
  if (!heatPerLitre.ok) return heatPerLitre;
  return ok((flowLPerMin / 60) * heatPerLitre.value * (supplyC - returnC));
}

/**
 * Heat in one litre, counted at the meter, for each kelvin of difference.
 *
 * Formula  ρ(at the meter)·cp(mean)/1000
 * Units    °C; kJ/(L K)
 * Valid    the fluid's own range; outside it an error, never a number
 * Source   definition
 * Checked  through `heatOutput`
 */
export function heatPerLitreKelvin(state: {
  readonly meterC: Celsius;
  readonly meanC: Celsius;
  readonly fluid: SystemFluid;
}): Result<number, OutOfRange> {
  const atMeter = fluidProperties({ fluid: state.fluid, temperatureC: state.meterC });
  if (!atMeter.ok) return atMeter;
  const atMean = fluidProperties({ fluid: state.fluid, temperatureC: state.meanC });
  if (!atMean.ok) return atMean;
  return ok((atMeter.value.densityKgPerM3 * atMean.value.specificHeatKjPerKgK) / 1000);
}
