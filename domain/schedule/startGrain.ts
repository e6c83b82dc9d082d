/** The minutes at which a start is proposed or set by hand: whole multiples of the grain since midnight. */

/** Common practice, no source: people promise times in quarters of an hour. */
export const START_GRAIN_MIN = 15;

export function onGrainFrom(minute: number, grainMin: number): number {
  return Math.ceil(minute / grainMin) * grainMin;
}

export function onGrainUntil(minute: number, grainMin: number): number {
  return Math.floor(minute / grainMin) * grainMin;
}

export function isOnGrain(minute: number, grainMin: number): boolean {
  return minute % grainMin === 0;
}
