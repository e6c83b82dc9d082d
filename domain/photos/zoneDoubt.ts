/** Whether a camera's clock that does not say its zone may be set to another one than it was read in. */
import { Temporal } from 'temporal-polyfill';

/** A camera writes its file as it takes the picture; seconds, on a slow card. */
const WRITTEN_WITHIN_S = 20;
/** Zones lie whole half hours apart; the three that keep a quarter (from memory) are left to the other checks. */
export const ZONE_STEP_S = 30 * 60;
/** From −12 to +14 hours. */
const MOST_APART_S = 26 * 3600;

/**
 * Seconds by which the clock seems to stand behind (positive) or ahead; 0: nothing says so. Two things say so: the file was
 * written whole half hours away from the picture's time as it was read, or the site keeps another time than the zone it was
 * read in. Cameras without a zone: Exif knew none before 2.31 (from memory).
 */
export function zoneDoubtS({
  takenAt,
  readIn,
  siteZone,
  fileAt,
}: {
  /** As read in `readIn`. */
  readonly takenAt: string;
  readonly readIn: string;
  readonly siteZone: string;
  /** The file's own date; null: nobody knows it. */
  readonly fileAt: string | null;
}): number {
  if (fileAt !== null) {
    const apartS = (Date.parse(fileAt) - Date.parse(takenAt)) / 1000;
    const zonesS = Math.round(apartS / ZONE_STEP_S) * ZONE_STEP_S;
    if (Math.abs(apartS - zonesS) <= WRITTEN_WITHIN_S && Math.abs(zonesS) <= MOST_APART_S) return zonesS;
  }
  const moment = Temporal.Instant.from(takenAt);
  const offsetS = (zone: string) => moment.toZonedDateTimeISO(zone).offsetNanoseconds / 1e9;
  return offsetS(readIn) - offsetS(siteZone);
}
