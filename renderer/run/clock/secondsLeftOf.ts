/** Seconds left of a wait; negative by as much as it is over. */
export function secondsLeftOf(startedAt: string, totalS: number, now: string): number {
  return totalS - (Date.parse(now) - Date.parse(startedAt)) / 1000;
}
