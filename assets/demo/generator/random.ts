/** A seeded source of chance (mulberry32), so that the scenario comes out the same every time. */

export type Random = {
  /** 0 ≤ x < 1. */
  readonly next: () => number;
  readonly between: (min: number, max: number) => number;
  readonly integer: (min: number, max: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
  readonly chance: (probability: number) => boolean;
  /** Bell-shaped around 0, as the sum of twelve even draws. */
  readonly noise: (standardDeviation: number) => number;
};

export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const between = (min: number, max: number): number => min + (max - min) * next();
  return {
    next,
    between,
    integer: (min, max) => Math.floor(between(min, max + 1)),
    pick: (list) => {
      const found = list[Math.floor(next() * list.length)];
      if (found === undefined) throw new Error('nothing to pick from');
      return found;
    },
    chance: (probability) => next() < probability,
    noise: (standardDeviation) => {
      let sum = -6;
      for (let draw = 0; draw < 12; draw += 1) sum += next();
      return sum * standardDeviation;
    },
  };
}
