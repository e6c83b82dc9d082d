import type { Celsius } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Share of hot water in a mix; times the mixed flow it is the hot flow needed.
 *
 * Formula  (Tm − Tc)/(Th − Tc)
 * Units    °C; share 0–1
 * Valid    cold 0–40 °C, hot above it by at least 1 K and up to 100 °C, mix between the two;
 *          outside it an error, never a number
 * Source   energy balance
 * Checked  tests/checks/hydronics/hotWaterRows.ts D5
 */
export function hotShare(mix: {
  readonly hotC: Celsius;
  readonly coldC: Celsius;
  readonly mixedC: Celsius;
}): Result<number, OutOfRange> {
  const { hotC, coldC, mixedC } = mix;
  const refused =
    checkRange('coldC', coldC, 0, 40) ??
    checkRange('hotC', hotC, coldC + 1, 100) ??
    checkRange('mixedC', mixedC, coldC, hotC);
  return refused ? err(refused) : ok((mixedC - coldC) / (hotC - coldC));
}
