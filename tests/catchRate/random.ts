/** Chance from a seed: the same seed gives the same sets on every computer. */

export type Random = {
  /** Evenly from min to max. */
  readonly between: (min: number, max: number) => number;
  readonly whole: (min: number, max: number) => number;
  readonly chance: (share: number) => boolean;
  readonly pick: <const T>(items: readonly [T, ...T[]]) => T;
  /** Bell-shaped around zero, cut off at ± limit; the limit is two standard deviations, as an accuracy class is stated. */
  readonly error: (limit: number) => number;
};

/** Mulberry32: 32 bits of state, good enough to draw readings. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const between = (min: number, max: number) => min + (max - min) * next();
  const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  return {
    between,
    whole: (min, max) => Math.floor(between(min, max + 1)),
    chance: (share) => next() < share,
    pick: (items) => items[Math.floor(next() * items.length)] ?? items[0],
    error: (limit) => {
      let drawn = normal() / 2;
      while (Math.abs(drawn) > 1) drawn = normal() / 2;
      return drawn * limit;
    },
  };
}
