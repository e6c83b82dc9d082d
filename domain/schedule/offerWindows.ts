/**
 * What is offered on the phone: of each place in the plan the windows of arrival it has room for, beginning on a quarter of
 * an hour. Of places that keep the same deadlines and promises and send people alike in courses and instruments, first one of each and then the later ones, so that a caller
 * has days to choose from; never one that is late before one that is not.
 */
import type { Slot } from './insertSlots.ts';
import { onGrainFrom, START_GRAIN_MIN } from './startGrain.ts';

/** Common practice: an arrival is promised within two hours. */
export const PROMISED_WINDOW_MIN = 120;

export function offerWindows(slots: readonly Slot[], count: number): readonly Slot[] {
  // As they come, best first: so classes stay in their order.
  const classes = Map.groupBy(slots, ({ daysLateKey, daysOutside, promisesMoved, wishesLacking }) =>
    JSON.stringify([daysLateKey, daysOutside, promisesMoved, wishesLacking]),
  );
  return [...classes.values()].flatMap(inTurns).slice(0, count);
}

function inTurns(slots: readonly Slot[]): readonly Slot[] {
  const windows = slots.map(windowsOf);
  const rounds = Math.max(0, ...windows.map((list) => list.length));
  return Array.from({ length: rounds }, (_, round) => windows.flatMap((list) => list.slice(round, round + 1))).flat();
}

function windowsOf(slot: Slot): readonly Slot[] {
  const found: Slot[] = [];
  const quarter = onGrainFrom(slot.fromMin, START_GRAIN_MIN);
  for (let fromMin = Math.min(quarter, slot.toMin); fromMin <= slot.toMin; fromMin += PROMISED_WINDOW_MIN)
    found.push({ ...slot, fromMin, toMin: Math.min(fromMin + PROMISED_WINDOW_MIN, slot.toMin) });
  return found;
}
