/** Times as the clock on the wall shows them, `HH:MM`, and the minutes since midnight that they stand for on a board. */

export function wallMinute(wallTime: string): number;
export function wallMinute(wallTime: string | null): number | null;
export function wallMinute(wallTime: string | null): number | null {
  if (wallTime === null) return null;
  const [hours, minutes] = wallTime.split(':');
  return Number(hours) * 60 + Number(minutes);
}

/** When a visit stands on the board: its planned minute, else the beginning of the promised window. */
export function boardStart(visit: {
  readonly startMin: number | null;
  readonly plannedFrom: string | null;
}): number | null {
  return visit.startMin ?? wallMinute(visit.plannedFrom);
}
