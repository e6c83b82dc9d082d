/**
 * The order in which waiting work presses: priority, then the latest day, then the wanted days, then what still keeps it from
 * being booked firmly (somebody has to see to that first), then who waited longest.
 */

export type Pressing = {
  readonly priority: number;
  readonly latestOn: string | null;
  readonly wantedToOn: string | null;
  /** What blocks it, by key. */
  readonly openReadiness: readonly string[];
  readonly openedAt: string;
};

/** For sorting, what presses most first. Days compare as text; one without a day presses less than any day. */
export function byPressing(a: Pressing, b: Pressing): number {
  return (
    b.priority - a.priority ||
    compareDays(a.latestOn, b.latestOn) ||
    compareDays(a.wantedToOn, b.wantedToOn) ||
    Number(b.openReadiness.length > 0) - Number(a.openReadiness.length > 0) ||
    (a.openedAt < b.openedAt ? -1 : a.openedAt > b.openedAt ? 1 : 0)
  );
}

function compareDays(a: string | null, b: string | null): number {
  if (a === b) return 0;
  if (a === null) return 1;
  if (b === null) return -1;
  return a < b ? -1 : 1;
}
