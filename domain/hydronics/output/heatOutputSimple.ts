import type { KelvinDifference, Kw, LPerMin } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Heat output the way it is worked out on paper: one kilogram per litre, 4.186 kJ/(kg K). A cross-check, about 1 % high.
 *
 * Formula  Q = V̇[L/s]·4.186·ΔT
 * Units    L/min, K; kW
 * Valid    water near room temperature; flow 0–10 000 L/min, difference 0–120 K; outside it an error, never a number
 * Source   arithmetic
 * Checked  tests/checks/hydronics/outputRows.ts Q2
 */
export function heatOutputSimple(circuit: {
  readonly flowLPerMin: LPerMin;
  readonly deltaTK: KelvinDifference;
}): Result<Kw, OutOfRange> {
  const { flowLPerMin, deltaTK } = circuit;
  const refused = checkRange('flowLPerMin', flowLPerMin, 0, 10_000) ?? checkRange('deltaTK', deltaTK, 0, 120);
  return refused ? err(refused) : ok((flowLPerMin / 60) * 4.186 * deltaTK);
}
