import { STANDARD_GRAVITY_M_PER_S2 } from '../../quantity/conversions.ts';
import type { LPerMin } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/** Smoothness C: new copper and plastic 150, copper for design 140, cautious 130, steel 100–120. */
export const SMOOTHNESS = { newCopperOrPlastic: 150, designCopper: 140, cautious: 130, steel: [100, 120] } as const;

/**
 * Friction loss by the empirical water form, US units: what North American tables are made with.
 *
 * Formula  psi/ft = 4.52·Q^1.85/(C^1.85·d^4.87)
 * Units    US gpm, inches; psi per foot
 * Valid    water near 15 °C, turbulent, above about 1 in; never for glycol or hot water, where it is 10–20 % high.
 *          Flow 0–20 000 gpm, inner diameter 0.2–40 in, C 60–160; outside it an error, never a number
 * Source   loss formula of the NFPA kind
 * Checked  tests/checks/hydronics/pipeRows.ts F2
 */
export function hazenWilliamsPsiPerFt(pipe: {
  readonly flowUsGpm: number;
  readonly innerDiameterIn: number;
  readonly smoothness: number;
}): Result<number, OutOfRange> {
  const { flowUsGpm, innerDiameterIn, smoothness } = pipe;
  const refused =
    checkRange('flowUsGpm', flowUsGpm, 0, 20_000) ??
    checkRange('innerDiameterIn', innerDiameterIn, 0.2, 40) ??
    checkRange('smoothness', smoothness, 60, 160);
  return refused ? err(refused) : ok((4.52 * flowUsGpm ** 1.85) / (smoothness ** 1.85 * innerDiameterIn ** 4.87));
}

/**
 * The same in SI units.
 *
 * Formula  h/L = 10.67·Q^1.852/(C^1.852·D^4.87), head of water at 1000 kg/m³ turned into pressure
 * Units    L/min, mm; Pa/m
 * Valid    as `hazenWilliamsPsiPerFt`; flow 0–75 000 L/min, inner diameter 5–1000 mm; outside it an error, never a number
 * Source   public encyclopedia
 * Checked  tests/checks/hydronics/pipeRows.ts F2, second form
 */
export function hazenWilliamsPaPerM(pipe: {
  readonly flowLPerMin: LPerMin;
  readonly innerDiameterMm: number;
  readonly smoothness: number;
}): Result<number, OutOfRange> {
  const { flowLPerMin, innerDiameterMm, smoothness } = pipe;
  const refused =
    checkRange('flowLPerMin', flowLPerMin, 0, 75_000) ??
    checkRange('innerDiameterMm', innerDiameterMm, 5, 1000) ??
    checkRange('smoothness', smoothness, 60, 160);
  if (refused) return err(refused);
  const headPerMetre =
    (10.67 * (flowLPerMin / 60_000) ** 1.852) / (smoothness ** 1.852 * (innerDiameterMm / 1000) ** 4.87);
  return ok(headPerMetre * 1000 * STANDARD_GRAVITY_M_PER_S2);
}
