/** Guessing a PIN gets slower: after three wrong ones each further one doubles the wait, to a quarter of an hour at most. */
import type { PinGuard } from './coreServices.ts';

const FREE_TRIES = 3;
const FIRST_WAIT_S = 5;
const LONGEST_WAIT_S = 900;

export function createPinGuard(nowMs: () => number): PinGuard {
  const wrongs = new Map<string, { count: number; untilMs: number }>();
  return {
    waitS: (staffId) => Math.max(0, Math.ceil(((wrongs.get(staffId)?.untilMs ?? 0) - nowMs()) / 1000)),
    wrong(staffId) {
      const count = (wrongs.get(staffId)?.count ?? 0) + 1;
      const waitS = count < FREE_TRIES ? 0 : Math.min(LONGEST_WAIT_S, FIRST_WAIT_S * 2 ** (count - FREE_TRIES));
      wrongs.set(staffId, { count, untilMs: nowMs() + waitS * 1000 });
    },
    right: (staffId) => void wrongs.delete(staffId),
  };
}
