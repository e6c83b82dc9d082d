/**
 * For each broken promise, every single move that could keep it: back into its promised window as the plan stands, or with
 * one other visit of that day going elsewhere. Taken when the goals get better.
 */
import { improveInsertion, newInsertion } from './bestInsertion.ts';
import { type CompiledProblem, MOVES_PER_PROMISE } from './compileProblem.ts';
import { compareGoals, countGoals, newGoals } from './countGoals.ts';
import { copyState, createState, insertVisit, orderOf, type RouteState, refreshRoute, takeOut } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';

export function keepPromises({ model, problem }: CompiledProblem, start: RouteState): RouteState {
  const work = new Float64Array(model.technicianCount);
  const best = createState(model);
  const trial = createState(model);
  copyState(start, best);
  const bestGoals = newGoals();
  const goals = newGoals();
  countGoals(model, best, bestGoals, work);
  const promised = problem.visits.flatMap((visit, index) => (visit.promised === null ? [] : [index]));

  const tryKeeping = (visit: number, option: number, other: number): boolean => {
    copyState(best, trial);
    if (!removeOne(model, trial, visit)) return false;
    if (other >= 0 && !removeOne(model, trial, other)) return false;
    if (!insertInto(model, trial, visit, option, option + 1)) return false;
    if (other >= 0 && !insertAnywhere(model, trial, other)) return false;
    countGoals(model, trial, goals, work);
    if (compareGoals(goals, bestGoals) >= 0) return false;
    copyState(trial, best);
    bestGoals.set(goals);
    return true;
  };

  for (let isBetter = true; isBetter; ) {
    isBetter = promised.some((visit) => {
      const chosen = best.optionOf[visit] as number;
      if (chosen >= 0 && (model.optionS4[chosen] as number) < MOVES_PER_PROMISE) return false;
      const end = model.optionIndex[visit + 1] as number;
      for (let option = model.optionIndex[visit] as number; option < end; option += 1) {
        if ((model.optionS4[option] as number) >= MOVES_PER_PROMISE) continue;
        if (tryKeeping(visit, option, -1)) return true;
        for (const other of orderOf(model, best, model.optionRoute[option] as number)) {
          if (other !== visit && tryKeeping(visit, option, other)) return true;
        }
      }
      return false;
    });
  }
  return best;
}

/** Not where it is recorded, and not where others wait for it: that would be more than one move. */
function removeOne(model: RoutingModel, state: RouteState, visit: number): boolean {
  if (model.isMovable[visit] === 0) return false;
  if ((state.routeOf[visit] as number) < 0) return true;
  const changed = new Set<number>();
  let taken = 0;
  takeOut(model, state, visit, (one, route) => {
    if (one >= 0) taken += 1;
    changed.add(route);
  });
  for (const route of changed) refreshRoute(model, state, route);
  return taken === 1;
}

function insertInto(model: RoutingModel, state: RouteState, visit: number, first: number, end: number): boolean {
  const found = newInsertion();
  improveInsertion(model, state, visit, first, end, found);
  if (found.option < 0) return false;
  insertVisit(model, state, visit, found.option, found.behind);
  return true;
}

function insertAnywhere(model: RoutingModel, state: RouteState, visit: number): boolean {
  const found = newInsertion();
  const end = model.optionIndex[visit + 1] as number;
  for (let option = model.optionIndex[visit] as number; option < end; option += 1)
    improveInsertion(model, state, visit, option, option + 1, found);
  if (found.option < 0) return false;
  insertVisit(model, state, visit, found.option, found.behind);
  return true;
}
