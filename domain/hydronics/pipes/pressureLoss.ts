import type { Celsius, LPerMin } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { fluidProperties, type SystemFluid } from '../fluid/systemFluid.ts';
import { flowVelocity } from './flowVelocity.ts';
import { frictionFactor, type TransitionalFlow } from './frictionFactor.ts';

/** Wall roughness, micrometres. PEX 1.5–7 from memory: the smooth end. Steel is 0.00015 ft. */
export const ROUGHNESS_UM = { copper: 1.5, pex: 1.5, steel: 46 } as const;

/**
 * Friction loss of a straight pipe by the friction factor: the form for hot water and for glycol.
 *
 * Formula  Δp/L = f·ρv²/(2D), Re = ρvD/μ, f from `frictionFactor`
 * Units    L/min, mm, µm, °C; Pa/m, m/s
 * Valid    full pipe, laminar or turbulent; Re between 2300 and 4000 is the error `transitional-flow`; flow from
 *          0.001 L/min up, the fluid's own range; outside it an error, never a number
 * Source   Darcy–Weisbach
 * Checked  tests/checks/hydronics/pipeRows.ts F3–F8
 */
export function pressureLoss(pipe: {
  readonly flowLPerMin: LPerMin;
  readonly innerDiameterMm: number;
  readonly roughnessUm: number;
  readonly fluid: SystemFluid;
  readonly temperatureC: Celsius;
}): Result<PressureLoss, OutOfRange | TransitionalFlow> {
  const { flowLPerMin, innerDiameterMm, roughnessUm, fluid, temperatureC } = pipe;
  const number = reynoldsNumber(pipe);
  if (!number.ok) return number;
  const factor = frictionFactor({
    reynolds: number.value,
    relativeRoughness: roughnessUm / 1000 / innerDiameterMm,
  });
  if (!factor.ok) return factor;
  const velocity = flowVelocity({ flowLPerMin, innerDiameterMm });
  if (!velocity.ok) return velocity;
  const properties = fluidProperties({ fluid, temperatureC });
  if (!properties.ok) return properties;
  const lossPaPerM =
    (factor.value * properties.value.densityKgPerM3 * velocity.value ** 2) / (2 * (innerDiameterMm / 1000));
  return ok({ lossPaPerM, velocityMPerS: velocity.value, reynolds: number.value });
}

export type PressureLoss = {
  readonly lossPaPerM: number;
  readonly velocityMPerS: number;
  readonly reynolds: number;
};

/**
 * Reynolds number of a full pipe.
 *
 * Formula  Re = ρvD/μ
 * Units    L/min, mm, °C
 * Valid    flow 0.001–100 000 L/min, inner diameter 1–1000 mm, the fluid's own range; outside it an error, never a number
 * Source   definition
 * Checked  tests/checks/hydronics/pipeRows.ts F8
 */
export function reynoldsNumber(pipe: {
  readonly flowLPerMin: LPerMin;
  readonly innerDiameterMm: number;
  readonly fluid: SystemFluid;
  readonly temperatureC: Celsius;
}): Result<number, OutOfRange> {
  const { flowLPerMin, innerDiameterMm, fluid, temperatureC } = pipe;
  const refused = checkRange('flowLPerMin', flowLPerMin, 0.001, null);
  if (refused) return err(refused);
  const velocity = flowVelocity({ flowLPerMin, innerDiameterMm });
  if (!velocity.ok) return velocity;
  const properties = fluidProperties({ fluid, temperatureC });
  if (!properties.ok) return properties;
  const { densityKgPerM3, viscosityPaS } = properties.value;
  return ok((densityKgPerM3 * velocity.value * (innerDiameterMm / 1000)) / viscosityPaS);
}
