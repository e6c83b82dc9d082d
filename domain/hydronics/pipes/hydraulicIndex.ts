import type { LPerMin } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * One number for how easily a circuit lets water through, to compare visits: it falls when something blocks.
 *
 * Formula  K = V̇/√Δp
 * Units    L/min, kPa; L/min per √kPa
 * Valid    flow 0–100 000 L/min, Δp 0.01–1000 kPa; outside it an error, never a number
 * Source   square law
 * Checked  tests/domain/hydronics/pipes/hydraulicIndex.test.ts
 */
export function hydraulicIndex(circuit: {
  readonly flowLPerMin: LPerMin;
  readonly pressureDropKpa: number;
}): Result<number, OutOfRange> {
  const { flowLPerMin, pressureDropKpa } = circuit;
  const refused =
    checkRange('flowLPerMin', flowLPerMin, 0, 100_000) ?? checkRange('pressureDropKpa', pressureDropKpa, 0.01, 1000);
  return refused ? err(refused) : ok(flowLPerMin / Math.sqrt(pressureDropKpa));
}

/**
 * How the pressure drop of an unchanged circuit follows its flow.
 *
 * Formula  (V̇2/V̇1)²
 * Units    L/min; ratio
 * Valid    flows from 0.001 to 100 000 L/min, turbulent; outside it an error, never a number
 * Source   square law
 * Checked  tests/checks/hydronics/trendRows.ts M2
 */
export function pressureDropRatio(change: {
  readonly flowBeforeLPerMin: LPerMin;
  readonly flowAfterLPerMin: LPerMin;
}): Result<number, OutOfRange> {
  const { flowBeforeLPerMin, flowAfterLPerMin } = change;
  const refused =
    checkRange('flowBeforeLPerMin', flowBeforeLPerMin, 0.001, 100_000) ??
    checkRange('flowAfterLPerMin', flowAfterLPerMin, 0.001, 100_000);
  return refused ? err(refused) : ok((flowAfterLPerMin / flowBeforeLPerMin) ** 2);
}
