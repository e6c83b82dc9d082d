import { LITRES_PER_IMPERIAL_GALLON, MG_PER_GRAIN, MG_PER_L_PER_GRAIN_PER_US_GALLON } from '../quantity/conversions.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

/** mg/L (ppm) always as CaCO3, never as Ca. */
export type HardnessUnit = 'mmol/L' | 'mg/L CaCO3' | '°dH' | '°fH' | 'gpg US' | '°Clark';

/**
 * A water hardness in another unit.
 *
 * Formula  through mmol/L of alkaline earths: CaCO3 100.0869 g/mol, CaO 56.0774 g/mol; 1 °dH = 10 mg/L CaO,
 *          1 °fH = 10 mg/L CaCO3, 1 gpg = 1 grain CaCO3 per US gallon, 1 °Clark = 1 grain CaCO3 per imperial gallon
 * Units    as named
 * Valid    0–1 000 000 in any unit; outside it an error, never a number
 * Source   definitions; molar masses; NIST SP 811 for the grain
 * Checked  tests/checks/water/waterQualityRows.ts H1–H4
 */
export function convertHardness(hardness: {
  readonly value: number;
  readonly from: HardnessUnit;
  readonly to: HardnessUnit;
}): Result<number, OutOfRange> {
  const { value, from, to } = hardness;
  const refused = checkRange('hardness', value, 0, 1_000_000);
  return refused ? err(refused) : ok((value * MMOL_PER_L[from]) / MMOL_PER_L[to]);
}

const CACO3_MG_PER_MMOL = 100.0869;
const CAO_MG_PER_MMOL = 56.0774;

const MMOL_PER_L: Record<HardnessUnit, number> = {
  'mmol/L': 1,
  'mg/L CaCO3': 1 / CACO3_MG_PER_MMOL,
  '°dH': 10 / CAO_MG_PER_MMOL,
  '°fH': 10 / CACO3_MG_PER_MMOL,
  'gpg US': MG_PER_L_PER_GRAIN_PER_US_GALLON / CACO3_MG_PER_MMOL,
  '°Clark': MG_PER_GRAIN / LITRES_PER_IMPERIAL_GALLON / CACO3_MG_PER_MMOL,
};
