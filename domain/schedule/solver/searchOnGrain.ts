/**
 * The search where starts are wished on a grain. Half of it keeps to the grain wherever it can. Where that leaves nothing to
 * wish for before travel, the other half goes on so; else it looks to the minute for what had no room on the grain, and its
 * plan is taken if it is better once every start that can be is back on the grain.
 */
import { compareGoals, countGoals, type Goals, newGoals } from './countGoals.ts';
import { offGrain, ontoGrain } from './ontoGrain.ts';
import { copyState, createState, type RouteState } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';
import { type SearchControl, type SearchOutcome, search } from './search.ts';

/** The second half begins in a plan that is good already. */
const SECOND_HEAT = 0.3;

export function searchOnGrain(model: RoutingModel, start: RouteState, control: SearchControl): SearchOutcome {
  if (model.optionGrain.every((grain) => grain <= 1)) return search(model, start, control);
  const { elapsedShare, onBetter } = control;
  const firstRounds = Math.ceil(control.maxRounds / 2);
  const first = search(model, start, {
    ...control,
    maxRounds: firstRounds,
    ...(elapsedShare === undefined ? {} : { elapsedShare: () => 2 * elapsedShare() }),
  });
  const { rounds } = first;
  const rest: SearchControl = {
    ...control,
    maxRounds: control.maxRounds - firstRounds,
    heat: Math.min(control.heat ?? 1, SECOND_HEAT),
    ...(elapsedShare === undefined ? {} : { elapsedShare: () => Math.max(0, 2 * elapsedShare() - 1) }),
  };
  const isToTheMinute = !isAllWell(first.goals);
  const from = createState(model);
  copyState(first.best, from);
  if (isToTheMinute) offGrain(model, from);
  const second = search(model, from, {
    ...rest,
    isToTheMinute,
    onBetter: (state, more) => {
      if (!isToTheMinute || compareBeforeTravel(goalsOf(model, state), first.goals) < 0)
        onBetter?.(state, rounds + more);
    },
  });
  const both = rounds + second.rounds;
  if (isToTheMinute) ontoGrain(model, second.best);
  const goals = goalsOf(model, second.best);
  return compareGoals(goals, first.goals) < 0 ? { best: second.best, goals, rounds: both } : { ...first, rounds: both };
}

const BEFORE_TRAVEL = 4;

/** Nothing left out that could be planned, nothing late or close, outside or moved. */
function isAllWell(goals: Goals): boolean {
  return goals.subarray(0, BEFORE_TRAVEL).every((goal) => goal === 0);
}

function compareBeforeTravel(a: Goals, b: Goals): number {
  const at = a.subarray(0, BEFORE_TRAVEL).findIndex((goal, index) => goal !== b[index]);
  return at < 0 ? 0 : (a[at] as number) - (b[at] as number);
}

function goalsOf(model: RoutingModel, state: RouteState): Goals {
  const goals = newGoals();
  countGoals(model, state, goals, new Float64Array(model.technicianCount));
  return goals;
}
