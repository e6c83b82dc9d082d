/** When a picture was taken, and whose word the time zone of its clock is. */
import { Temporal } from 'temporal-polyfill';
import type { PhotoFacts } from './readPhotoFacts.ts';
import { ZONE_STEP_S } from './zoneDoubt.ts';

export type TakenInstant = {
  readonly at: string;
  /** `camera`: it wrote its offset down; `satellite`: its clock stands whole half hours from theirs; `firm`: nobody says, the firm's own. */
  readonly zoneBy: 'camera' | 'satellite' | 'firm';
  /** The satellites' time bears the zone out, whoever says it. */
  readonly isProven: boolean;
  /** Seconds by which the satellites' time speaks for a later (positive) or earlier moment; 0: it does not. */
  readonly satelliteDoubtS: number;
};

/** A camera's clock runs a little off. An old fix, minutes or hours before the picture, falls outside nearly always: 29 of 30. */
const CLOCK_OFF_S = 30;
const MOST_BEHIND_S = -12 * 3600;
const MOST_AHEAD_S = 14 * 3600;

/** null: the camera wrote no time. */
export function takenInstant(facts: PhotoFacts, firmZone: string): TakenInstant | null {
  const { takenLocal, offset, satelliteUtc } = facts;
  if (takenLocal === null) return null;
  const local = Temporal.PlainDateTime.from(takenLocal);
  const satelliteS = satelliteUtc === null ? null : satelliteOffsetS(takenLocal, satelliteUtc);
  if (offset === null && satelliteS !== null) {
    const at = Date.parse(`${takenLocal}Z`) - satelliteS * 1000;
    return { at: new Date(at).toISOString(), zoneBy: 'satellite', isProven: true, satelliteDoubtS: 0 };
  }
  const zoned = local.toZonedDateTime(offset ?? firmZone);
  return {
    at: new Date(zoned.epochMilliseconds).toISOString(),
    zoneBy: offset === null ? 'firm' : 'camera',
    isProven: satelliteS !== null && satelliteS * 1e9 === zoned.offsetNanoseconds,
    satelliteDoubtS: satelliteS === null ? 0 : zoned.offsetNanoseconds / 1e9 - satelliteS,
  };
}

/** What the camera's clock is ahead of UTC; null: no whole half hours, so the fix is old or the clock is wrong. */
function satelliteOffsetS(takenLocal: string, satelliteUtc: string): number | null {
  const aheadS = (Date.parse(`${takenLocal}Z`) - Date.parse(satelliteUtc)) / 1000;
  const zoneS = Math.round(aheadS / ZONE_STEP_S) * ZONE_STEP_S;
  const isZone = zoneS >= MOST_BEHIND_S && zoneS <= MOST_AHEAD_S && Math.abs(aheadS - zoneS) <= CLOCK_OFF_S;
  return isZone ? zoneS : null;
}
