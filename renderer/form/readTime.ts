/** A time of day and a length of time as people write them: `8`, `8:30`, `0830`, `2 h 30`, `90 min`. */

/** `HH:MM`, null when nothing was typed, undefined when it is no time. */
export function readTime(text: string): string | null | undefined {
  const plain = text.trim().toLowerCase();
  if (plain === '') return null;
  const match = /^(\d{1,2})(?:\s*[:.h]?\s*([0-5]\d))?\s*(am|pm)?$/.exec(plain);
  if (!match) return undefined;
  const typed = Number(match[1]);
  const half = match[3];
  if (half !== undefined && (typed < 1 || typed > 12)) return undefined;
  const hour = half === undefined ? typed : (typed % 12) + (half === 'pm' ? 12 : 0);
  return hour > 23 ? undefined : `${String(hour).padStart(2, '0')}:${match[2] ?? '00'}`;
}

/** Whole minutes; a bare number counts as hours up to 12 and as minutes above. Null when it is no length of time. */
export function readDuration(text: string): number | null {
  const plain = text.trim().toLowerCase().replace(',', '.');
  const clock = /^(\d{1,2}):([0-5]\d)$/.exec(plain);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const hours = /^(\d+(?:\.\d+)?)\s*h(?:ours?|rs?)?(?:\s*(\d{1,2})\s*(?:min|m)?)?$/.exec(plain);
  if (hours) return Math.round(Number(hours[1]) * 60) + Number(hours[2] ?? 0);
  const minutes = /^(\d+)\s*(?:min(?:utes?)?|m)$/.exec(plain);
  if (minutes) return Number(minutes[1]);
  const bare = /^(\d+(?:\.\d+)?)$/.exec(plain);
  if (!bare) return null;
  const value = Number(bare[1]);
  return Math.round(value <= 12 ? value * 60 : value);
}

/** `2 h 30 min` */
export function durationWords(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
