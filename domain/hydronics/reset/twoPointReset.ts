import type { Celsius } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Supply temperature by the straight line most controls offer, held at both ends.
 *
 * Formula  Ts = Tsw + (Tsd − Tsw)(Tw − To)/(Tw − Td), clamped between Tsw and Tsd
 * Units    °C
 * Valid    warm point at least 1 K above the design point outdoors, design supply not below the warm one, supplies
 *          5–120 °C, outdoor −60 to 60 °C; outside it an error, never a number
 * Source   two-point line, common practice
 * Checked  tests/checks/hydronics/resetRows.ts R10
 */
export function twoPointReset(line: {
  readonly designOutdoorC: Celsius;
  readonly designSupplyC: Celsius;
  readonly warmOutdoorC: Celsius;
  readonly warmSupplyC: Celsius;
  readonly outdoorC: Celsius;
}): Result<Celsius, OutOfRange> {
  const { designOutdoorC, designSupplyC, warmOutdoorC, warmSupplyC, outdoorC } = line;
  const refused =
    checkRange('outdoorC', outdoorC, -60, 60) ??
    checkRange('designOutdoorC', designOutdoorC, -60, null) ??
    checkRange('warmOutdoorC', warmOutdoorC, designOutdoorC + 1, 41) ??
    checkRange('warmSupplyC', warmSupplyC, 5, null) ??
    checkRange('designSupplyC', designSupplyC, warmSupplyC, 120);
  if (refused) return err(refused);
  const share = (warmOutdoorC - outdoorC) / (warmOutdoorC - designOutdoorC);
  const clampedShare = Math.min(1, Math.max(0, share));
  return ok(warmSupplyC + (designSupplyC - warmSupplyC) * clampedShare);
}
