/** Lets the search work on a published instance for so much processor time, and counts the length apart from it. */
import { firstState } from '../../../domain/schedule/solver/firstState.ts';
import { createState } from '../../../domain/schedule/solver/routeState.ts';
import { search } from '../../../domain/schedule/solver/search.ts';
import { checkedLength, type RoutingInstance, routesOf, routingModelOf } from './routingInstance.ts';

/** `length` null: a rule of the instance is broken. */
export type SearchFound = { readonly length: number | null; readonly rounds: number };

export function searchFor(instance: RoutingInstance, seed: number, limitMs: number): SearchFound {
  const passed = processorTime();
  const model = routingModelOf(instance);
  const { best, rounds } = search(model, firstState(model, createState(model), seed), {
    seed,
    maxRounds: 100_000_000,
    elapsedShare: () => passed() / limitMs,
  });
  return { length: checkedLength(instance, routesOf(model, best.next)), rounds };
}

/** Processor time of this process from now on, so that whoever else is busy does not count. */
export function processorTime(): () => number {
  const begun = process.cpuUsage();
  let asked = 0;
  let last = 0;
  return () => {
    // Asking costs as much as some rounds of the search.
    if (asked % ASK_EVERY === 0) {
      const { user, system } = process.cpuUsage(begun);
      last = (user + system) / 1000;
    }
    asked += 1;
    return last;
  };
}

const ASK_EVERY = 16;
