/**
 * A zone that gives off less than the boiler makes at its lowest fire lets it cycle; and high fire can't be held on it long
 * enough for a combustion test.
 *
 * Formula  lowest fire = highest input / turndown; minutes to warm = litres · 4.186 · rise / (60 · (fire − zone))
 * Units    kW, L, K; minutes
 * Source   energy balance; water 4.186 kJ/(kg K), 1 kg/L
 */
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

export type ZoneVersusFire = {
  readonly lowestFireKw: number;
  readonly willCycle: boolean;
  /** Whether the zone takes all of high fire; if not, more zones or a hot-water draw are needed for the test. */
  readonly holdsHighFire: boolean;
};

export function zoneVersusMinimumFire(input: {
  readonly maxInputKw: number;
  readonly turndown: number;
  readonly openZonesKw: readonly number[];
}): Result<ZoneVersusFire, OutOfRange> {
  const zonesKw = input.openZonesKw.reduce((sum, zone) => sum + zone, 0);
  const refused =
    checkRange('maxInputKw', input.maxInputKw, 0.5, 10_000) ??
    checkRange('turndown', input.turndown, 1, 50) ??
    checkRange('openZonesKw', zonesKw, 0, 10_000);
  if (refused) return err(refused);
  const lowestFireKw = input.maxInputKw / input.turndown;
  return ok({ lowestFireKw, willCycle: zonesKw < lowestFireKw, holdsHighFire: zonesKw >= input.maxInputKw });
}

/** null: the load takes all of it, for as long as wanted. */
export function minutesHighFireCanBeHeld(input: {
  readonly systemVolumeL: number;
  readonly riseK: number;
  readonly fireKw: number;
  readonly loadKw: number;
}): Result<number | null, OutOfRange> {
  const refused =
    checkRange('systemVolumeL', input.systemVolumeL, 1, 100_000) ??
    checkRange('riseK', input.riseK, 0, 100) ??
    checkRange('fireKw', input.fireKw, 0, 10_000) ??
    checkRange('loadKw', input.loadKw, 0, 10_000);
  if (refused) return err(refused);
  const surplusKw = input.fireKw - input.loadKw;
  return ok(surplusKw <= 0 ? null : (input.systemVolumeL * 4.186 * input.riseK) / (60 * surplusKw));
}
