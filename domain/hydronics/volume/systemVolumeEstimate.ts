import type { Kw, Litre } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { EMITTER_VOLUMES_L_PER_KW, type VolumeEmitter } from './emitterVolumes.ts';

/**
 * System water estimated from the boiler's output and its emitters.
 *
 * Formula  output × litres per kW, ±40 %
 * Units    kW; L
 * Valid    output 0–10 000 kW; outside it an error, never a number
 * Source   water-treatment trade sheet
 * Checked  tests/checks/hydronics/volumeRows.ts V5
 */
export function systemVolumeEstimate(system: {
  readonly outputKw: Kw;
  readonly emitter: VolumeEmitter;
}): Result<VolumeEstimate, OutOfRange> {
  const { outputKw, emitter } = system;
  const refused = checkRange('outputKw', outputKw, 0, 10_000);
  if (refused) return err(refused);
  const litres = outputKw * EMITTER_VOLUMES_L_PER_KW[emitter];
  return ok({ litres, leastL: litres * (1 - ESTIMATE_SHARE), mostL: litres * (1 + ESTIMATE_SHARE) });
}

export type VolumeEstimate = { readonly litres: Litre; readonly leastL: Litre; readonly mostL: Litre };

/**
 * The build-up of older British domestic manuals: panels and small-bore pipe by output, the exchanger by its sheet.
 *
 * Formula  8 L/kW + 1 L/kW + exchanger
 * Units    kW, L; L
 * Valid    output 0–200 kW, exchanger 0–500 L; outside it an error, never a number
 * Source   older British installation manuals
 * Checked  tests/domain/hydronics/volume/systemVolumeEstimate.test.ts
 */
export function britishDomesticVolume(system: {
  readonly outputKw: Kw;
  readonly exchangerL: Litre;
}): Result<Litre, OutOfRange> {
  const { outputKw, exchangerL } = system;
  const refused = checkRange('outputKw', outputKw, 0, 200) ?? checkRange('exchangerL', exchangerL, 0, 500);
  return refused ? err(refused) : ok(outputKw * (8 + 1) + exchangerL);
}

const ESTIMATE_SHARE = 0.4;
