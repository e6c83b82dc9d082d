/** The first plan: recorded and pinned visits, then the pressing ones, then the others by regret. */
import { compareGoals, countGoals, newGoals } from './countGoals.ts';
import { createInserter, createPool } from './insertAll.ts';
import { randomSource } from './randomSource.ts';
import { copyState, createState, type RouteState } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';

/** Adds to a start, which is left as it is, everything that fits; the better of pressing first and most regret first. */
export function firstState(model: RoutingModel, start: RouteState, seed: number): RouteState {
  const inserter = createInserter(model, randomSource(seed));
  const work = new Float64Array(model.technicianCount);
  const bestGoals = newGoals();
  const best = createState(model);
  for (const isPressingFirst of [true, false]) {
    const state = createState(model);
    copyState(start, state);
    const pool = createPool(model);
    const fixed = createPool(model);
    for (let visit = 0; visit < model.visitCount; visit += 1) {
      if ((state.routeOf[visit] as number) >= 0) continue;
      // Recorded visits first of all: nothing may take their time.
      const list = model.pressing[visit] === 5 ? fixed : pool;
      list.visits[list.count] = visit;
      list.count += 1;
    }
    inserter.greedy(state, fixed, 0);
    inserter.regret(state, pool, 2, 0, isPressingFirst);
    const goals = newGoals();
    countGoals(model, state, goals, work);
    if (isPressingFirst || compareGoals(goals, bestGoals) < 0) {
      bestGoals.set(goals);
      copyState(state, best);
    }
    if (!hasSeveralClasses(model)) break;
  }
  return best;
}

function hasSeveralClasses(model: RoutingModel): boolean {
  return model.pressing.some((pressing) => pressing !== model.pressing[0]);
}
