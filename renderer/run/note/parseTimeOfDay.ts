/** A time of day as people type it: `14:32`, `14.32`, `1432`, `2:32 pm`, `9h05`; null when it cannot be one. */
export function parseTimeOfDay(text: string): string | null {
  const match = /^\s*(\d{1,2})\s*(?:[:.h ]\s*)?([0-5]\d)\s*(am|pm|a\.m\.|p\.m\.)?\s*$/i.exec(text);
  if (!match) return null;
  const typedHour = Number(match[1]);
  const half = match[3]?.toLowerCase().charAt(0);
  if (half !== undefined && (typedHour < 1 || typedHour > 12)) return null;
  const hour = half === undefined ? typedHour : (typedHour % 12) + (half === 'p' ? 12 : 0);
  if (hour > 23) return null;
  return `${String(hour).padStart(2, '0')}:${match[2]}`;
}
