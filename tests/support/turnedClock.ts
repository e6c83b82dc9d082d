/** A clock that goes on by itself and that a test can turn ahead: the same for the core and for the page in the browser. */
import { performance } from 'node:perf_hooks';
import type { BrowserContext } from 'playwright-core';

export type TurnedClock = {
  readonly now: () => string;
  readonly steadyMs: () => number;
  /** A wait as on site: wall clock and steady clock both go on by it, and whatever the page waits for comes due. */
  readonly wait: (seconds: number) => Promise<void>;
  /** The core's clock alone; the page catches up with the next wait. */
  readonly turn: (seconds: number) => void;
  /** Before the context's first page is opened. */
  readonly installIn: (context: BrowserContext) => Promise<void>;
};

export function turnedClock(startAt: string): TurnedClock {
  const startMs = Date.parse(startAt);
  const beganMs = performance.now();
  let turnedMs = 0;
  let shownMs = 0;
  let shownIn: BrowserContext | null = null;
  const sinceMs = () => performance.now() - beganMs + turnedMs;
  const now = () => new Date(startMs + Math.floor(sinceMs())).toISOString();
  return {
    now,
    steadyMs: () => 1_000_000 + sinceMs(),
    async wait(seconds) {
      turnedMs += seconds * 1000;
      const behindMs = turnedMs - shownMs;
      shownMs = turnedMs;
      await shownIn?.clock.fastForward(behindMs);
    },
    turn(seconds) {
      turnedMs += seconds * 1000;
    },
    async installIn(context) {
      shownIn = context;
      shownMs = turnedMs;
      await context.clock.install({ time: new Date(now()) });
    },
  };
}
