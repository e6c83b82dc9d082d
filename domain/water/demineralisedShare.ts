import type { Litre } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

/**
 * How much demineralised water brings tap water down to a hardness (or conductivity).
 *
 * Formula  A = (c_raw − c_max)/(c_raw − c_demin); 0 when the tap water is soft enough already
 * Units    any one unit for all three, L; share and litres of demineralised water
 * Valid    concentrations 0–100 000, demineralised below raw and at most the target, volume 0–10 000 000 L;
 *          outside it an error, never a number
 * Source   mixing balance
 * Checked  tests/checks/water/waterQualityRows.ts H7
 */
export function demineralisedShare(blend: {
  readonly raw: number;
  readonly demineralised: number;
  readonly target: number;
  readonly volumeL: Litre;
}): Result<{ readonly share: number; readonly demineralisedL: Litre }, OutOfRange> {
  const { raw, demineralised, target, volumeL } = blend;
  const refused =
    checkRange('raw', raw, 0, 100_000) ??
    checkRange('target', target, 0, 100_000) ??
    checkRange('demineralised', demineralised, 0, Math.min(raw, target)) ??
    checkRange('volumeL', volumeL, 0, 10_000_000);
  if (refused) return err(refused);
  const share = raw <= target ? 0 : (raw - target) / (raw - demineralised);
  return ok({ share, demineralisedL: share * volumeL });
}
