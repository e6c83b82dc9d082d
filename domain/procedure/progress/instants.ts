/** Instants as text in a record, compared and subtracted. */
import { Temporal } from 'temporal-polyfill';

/** A screen redraws once a second: its "now" may be a little older than a start just stored. More than this is a moved clock. */
export const CLOCK_SLACK_S = 5;

export function secondsBetween(fromIso: string, toIso: string): number {
  return (epochMs(toIso) - epochMs(fromIso)) / 1000;
}

export function isBefore(oneIso: string, otherIso: string): boolean {
  return epochMs(oneIso) < epochMs(otherIso);
}

/** The entry with the latest instant; of equals the one recorded last. */
export function newest<T>(entries: readonly T[], at: (entry: T) => string): T | undefined {
  let best: T | undefined;
  for (const entry of entries) {
    if (best === undefined || !isBefore(at(entry), at(best))) best = entry;
  }
  return best;
}

/** Whole seconds still to wait, never below zero; null when the clock stands before the start. */
export function secondsLeft(startedAt: string, totalS: number, now: string): number | null {
  const elapsed = secondsBetween(startedAt, now);
  if (elapsed < -CLOCK_SLACK_S) return null;
  return Math.max(0, Math.min(totalS, Math.ceil(totalS - elapsed)));
}

/** As the store has them, in UTC to the millisecond: what the language itself reads exactly, and in a twentieth of the time. */
const STORED = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;

function epochMs(iso: string): number {
  const stored = STORED.test(iso) ? Date.parse(iso) : Number.NaN;
  if (!Number.isNaN(stored)) return stored;
  return Temporal.Instant.from(iso).epochMilliseconds;
}
