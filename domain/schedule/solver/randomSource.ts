/** The search's own chance: the same number to start from gives the same draws on every computer. */
export type RandomSource = {
  /** Evenly from 0 up to, not including, 1. */
  readonly next: () => number;
  /** A whole number from 0 up to, not including, the limit. */
  readonly below: (limit: number) => number;
};

/** Mulberry32 (T. Ettinger, public domain): 32 bits of state, passes what a search needs of it. */
export function randomSource(from: number): RandomSource {
  let state = from >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return { next, below: (limit) => Math.floor(next() * limit) };
}

export function shuffle(items: Int32Array, count: number, random: RandomSource): void {
  for (let last = count - 1; last > 0; last -= 1) {
    const at = random.below(last + 1);
    const kept = items[last] as number;
    items[last] = items[at] as number;
    items[at] = kept;
  }
}
