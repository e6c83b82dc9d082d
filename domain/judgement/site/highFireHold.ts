/**
 * Whether the heat that the emitters take keeps the burner at high fire long enough to read it: on a load that is too small
 * the water gets hot and the burner turns down in the middle of the readings.
 */
import type { ModelSheet } from '../../procedure/modelSheet.ts';
import { plateRatingKw } from '../../procedure/plateRating.ts';
import type { RunRecord } from '../../procedure/runRecord.ts';
import { minutesHighFireCanBeHeld } from './zoneVersusMinimumFire.ts';

/** How much warmer the water may get before a burner turns down by itself (common practice, no source). */
export const USUAL_RISE_K = 30;

export type HighFireHold = {
  readonly fireKw: number;
  readonly loadKw: number;
  readonly systemVolumeL: number;
  readonly minutes: number;
  /** To settle, and for the samples the sheet wants apart from each other. */
  readonly neededMinutes: number;
};

/** null: the load takes all of it, or what it takes is not known. The plate's input stands for what reaches the water: on the short side. */
export function highFireHold(
  record: Pick<RunRecord, 'site' | 'appliance' | 'readings'>,
  sheet: Pick<ModelSheet, 'appliance' | 'firingPoints' | 'steady'>,
): HighFireHold | null {
  const { zones = [], systemVolumeL } = record.site;
  const fireKw = plateRatingKw(record) ?? sheet.appliance.ratedInputMaxKw;
  const [highest] = sheet.firingPoints;
  const taken = zones.map(({ ratedKw }) => ratedKw);
  if (fireKw === null || systemVolumeL === null || highest === undefined || taken.length === 0) return null;
  const known = taken.filter((kw): kw is number => kw !== null);
  if (known.length < taken.length) return null;
  const loadKw = known.reduce((sum, kw) => sum + kw, 0);
  const held = minutesHighFireCanBeHeld({ systemVolumeL, riseK: USUAL_RISE_K, fireKw, loadKw });
  if (!held.ok || held.value === null) return null;
  const neededS = highest.settleS + (sheet.steady.minSamples - 1) * sheet.steady.apartS;
  return { fireKw, loadKw, systemVolumeL, minutes: held.value, neededMinutes: neededS / 60 };
}
