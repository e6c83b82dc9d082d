/**
 * The calendar day of an instant in a place. Asking the time zone costs some 40 µs; a place's offsets over a year, an hour
 * wider on both sides, settle nearly every instant without asking.
 */
import { Temporal } from 'temporal-polyfill';

const HOUR_MS = 3_600_000;

export function dayAt(timeZone: string, instant: string): string {
  const atMs = Date.parse(instant);
  const { leastMs, mostMs } = offsetsOf(timeZone, instant.slice(0, 4));
  const earliest = utcDay(atMs + leastMs);
  return earliest === utcDay(atMs + mostMs) ? earliest : exactDay(timeZone, atMs);
}

type Offsets = { readonly leastMs: number; readonly mostMs: number };
const known = new Map<string, Offsets>();

function offsetsOf(timeZone: string, year: string): Offsets {
  const key = `${timeZone} ${year}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  const offsets = ['01-01', '07-01'].map(
    (day) =>
      Temporal.Instant.from(`${year}-${day}T00:00:00Z`).toZonedDateTimeISO(timeZone).offsetNanoseconds / 1_000_000,
  );
  const made = { leastMs: Math.min(...offsets) - HOUR_MS, mostMs: Math.max(...offsets) + HOUR_MS };
  known.set(key, made);
  return made;
}

function utcDay(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}

function exactDay(timeZone: string, atMs: number): string {
  return Temporal.Instant.fromEpochMilliseconds(atMs).toZonedDateTimeISO(timeZone).toPlainDate().toString();
}
