import type { Litre } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { convertHardness } from './hardness.ts';

/**
 * Scale that filling with hard water can lay down, at most.
 *
 * Formula  volume × hardness as CaCO3
 * Units    L, °dH; g CaCO3
 * Valid    volume 0–10 000 000 L, hardness 0–200 °dH; outside it an error, never a number
 * Source   arithmetic
 * Checked  tests/checks/water/waterQualityRows.ts H8
 */
export function scalePotential(fill: {
  readonly volumeL: Litre;
  readonly hardnessDh: number;
}): Result<number, OutOfRange> {
  const { volumeL, hardnessDh } = fill;
  const refused = checkRange('volumeL', volumeL, 0, 10_000_000) ?? checkRange('hardnessDh', hardnessDh, 0, 200);
  if (refused) return err(refused);
  const mgPerL = convertHardness({ value: hardnessDh, from: '°dH', to: 'mg/L CaCO3' });
  return mgPerL.ok ? ok((volumeL * mgPerL.value) / 1000) : mgPerL;
}
