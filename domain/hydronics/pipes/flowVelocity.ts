import type { LPerMin } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Mean velocity in a full pipe. In North American units v[ft/s] = 0.4085·gpm/d²[in].
 *
 * Formula  v = V̇/A
 * Units    L/min, mm; m/s
 * Valid    flow 0–100 000 L/min, inner diameter 1–1000 mm; outside it an error, never a number
 * Source   definition
 * Checked  tests/checks/hydronics/pipeRows.ts F1, F4, F5, F7, F8
 */
export function flowVelocity(pipe: {
  readonly flowLPerMin: LPerMin;
  readonly innerDiameterMm: number;
}): Result<number, OutOfRange> {
  const { flowLPerMin, innerDiameterMm } = pipe;
  const refused = checkRange('flowLPerMin', flowLPerMin, 0, 100_000) ?? checkInnerDiameter(innerDiameterMm);
  return refused ? err(refused) : ok(flowLPerMin / 60_000 / areaM2(innerDiameterMm));
}

/**
 * Flow at which a pipe reaches a velocity.
 *
 * Formula  V̇ = v·A
 * Units    m/s, mm; L/min
 * Valid    velocity 0–20 m/s, inner diameter 1–1000 mm; outside it an error, never a number
 * Source   inverse of `flowVelocity`
 * Checked  tests/checks/hydronics/pipeRows.ts F9
 */
export function flowAtVelocity(pipe: {
  readonly velocityMPerS: number;
  readonly innerDiameterMm: number;
}): Result<LPerMin, OutOfRange> {
  const { velocityMPerS, innerDiameterMm } = pipe;
  const refused = checkRange('velocityMPerS', velocityMPerS, 0, 20) ?? checkInnerDiameter(innerDiameterMm);
  return refused ? err(refused) : ok(velocityMPerS * areaM2(innerDiameterMm) * 60_000);
}

function checkInnerDiameter(innerDiameterMm: number): OutOfRange | null {
  return checkRange('innerDiameterMm', innerDiameterMm, 1, 1000);
}

function areaM2(innerDiameterMm: number): number {
  return (Math.PI / 4) * (innerDiameterMm / 1000) ** 2;
}
