import { fahrenheitToCelsius } from '../../quantity/conversions.ts';
import type { Celsius } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/** Exponents of the North American form, from memory of ASHRAE. */
export const US_EMITTER_EXPONENTS = { 'cast-iron': 1.2, baseboard: 1.31, convector: 1.42 } as const;
export type UsEmitter = keyof typeof US_EMITTER_EXPONENTS;

/** Rule for fin-tube at 180 °F average water, Btu/h per foot. Common practice, no source. */
export const FIN_TUBE_RULE_BTU_PER_H_FT: readonly [least: number, most: number] = [550, 600];

/**
 * Share of its rating (180 °F average water, 65 °F air) that an emitter gives at another average water temperature.
 *
 * Formula  [(Tw − Ta)/(180 °F − 65 °F)]^n
 * Units    °C; share
 * Valid    air 0–40 °C, water from the air's temperature to 120 °C; outside it an error, never a number
 * Source   ASHRAE exponents, from memory
 * Checked  tests/checks/hydronics/emitterRows.ts O5, O6
 */
export function usEmitterFactor(emitter: {
  readonly kind: UsEmitter;
  readonly averageWaterC: Celsius;
  readonly airC?: Celsius;
}): Result<number, OutOfRange> {
  const { kind, averageWaterC, airC = RATED_AIR_C } = emitter;
  const refused = checkRange('airC', airC, 0, 40) ?? checkRange('averageWaterC', averageWaterC, airC, 120);
  if (refused) return err(refused);
  const ratio = (averageWaterC - airC) / (RATED_WATER_C - RATED_AIR_C);
  return ok(ratio ** US_EMITTER_EXPONENTS[kind]);
}

/**
 * Bare output behind a fin-tube rating: catalogues add 15 % as a heating-effect factor.
 *
 * Formula  rated/1.15
 * Units    any, the same in and out
 * Valid    0–1 000 000; outside it an error, never a number
 * Source   trade articles on baseboard ratings
 * Checked  tests/checks/hydronics/emitterRows.ts O7
 */
export function bareBaseboardOutput(rating: { readonly ratedOutput: number }): Result<number, OutOfRange> {
  const refused = checkRange('ratedOutput', rating.ratedOutput, 0, 1_000_000);
  return refused ? err(refused) : ok(rating.ratedOutput / HEATING_EFFECT_FACTOR);
}

const RATED_WATER_C = fahrenheitToCelsius(180);
const RATED_AIR_C = fahrenheitToCelsius(65);
const HEATING_EFFECT_FACTOR = 1.15;
