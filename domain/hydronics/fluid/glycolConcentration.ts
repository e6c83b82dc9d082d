import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import type { Glycol } from './glycolKind.ts';

/**
 * Mass % of a mixture given in volume %: containers and refractometers speak of volume, the property tables of mass.
 *
 * Formula  mass % = 100·v·ρg / (v·ρg + (100 − v)·ρw), volumes before mixing, at 20 °C
 * Units    %
 * Valid    0–100 %; outside it an error, never a number
 * Source   definition; ρ at 20 °C 1036 (PG), 1113 (EG), 998.2 kg/m³ (water)
 * Checked  tests/checks/hydronics/glycolRows.ts G5
 */
export function glycolMassPct(mixture: {
  readonly glycol: Glycol;
  readonly glycolVolPct: number;
}): Result<number, OutOfRange> {
  const { glycol, glycolVolPct } = mixture;
  const refused = checkRange('glycolVolPct', glycolVolPct, 0, 100);
  if (refused) return err(refused);
  const glycolMass = glycolVolPct * DENSITY_AT_20_C_KG_PER_M3[glycol];
  const waterMass = (100 - glycolVolPct) * WATER_DENSITY_AT_20_C_KG_PER_M3;
  return ok((100 * glycolMass) / (glycolMass + waterMass));
}

/** The way back from mass % to volume %: same range, same source; inverse checked by property test. */
export function glycolVolPct(mixture: {
  readonly glycol: Glycol;
  readonly glycolMassPct: number;
}): Result<number, OutOfRange> {
  const { glycol, glycolMassPct: massPct } = mixture;
  const refused = checkRange('glycolMassPct', massPct, 0, 100);
  if (refused) return err(refused);
  const glycolVolume = massPct / DENSITY_AT_20_C_KG_PER_M3[glycol];
  const waterVolume = (100 - massPct) / WATER_DENSITY_AT_20_C_KG_PER_M3;
  return ok((100 * glycolVolume) / (glycolVolume + waterVolume));
}

const DENSITY_AT_20_C_KG_PER_M3: Record<Glycol, number> = { 'propylene-glycol': 1036, 'ethylene-glycol': 1113 };
const WATER_DENSITY_AT_20_C_KG_PER_M3 = 998.2;
