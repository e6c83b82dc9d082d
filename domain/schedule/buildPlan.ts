/** Build: a plan for a range of days from nothing but what is pinned. */
import { type Plan, placementsOf } from './plan.ts';
import type { PlanningProblem } from './planningProblem.ts';
import { type CompiledProblem, compileProblem } from './solver/compileProblem.ts';
import { firstState } from './solver/firstState.ts';
import { ontoGrain } from './solver/ontoGrain.ts';
import { readPlan } from './solver/readPlan.ts';
import { createState } from './solver/routeState.ts';
import { searchOnGrain } from './solver/searchOnGrain.ts';

export type PlannerControl = {
  readonly seed: number;
  readonly maxRounds: number;
  readonly shouldStop?: () => boolean;
  /** 0 to 1, where a clock sets the limit. */
  readonly elapsedShare?: () => number;
  /** From how hot the search cools; 1 is usual. */
  readonly heat?: number;
  /** Asked after each better plan; the plan itself is only made when somebody calls `read`. */
  readonly onBetter?: (read: () => Plan, rounds: number) => void;
};

export type PlannerOutcome = { readonly plan: Plan; readonly rounds: number };

/** `current`: where visits are now; one that stays with its technician on its day keeps its start if it can. */
export function buildPlan(
  problem: PlanningProblem,
  control: PlannerControl,
  current: Pick<Plan, 'routes'> = { routes: [] },
): PlannerOutcome {
  const compiled = compileProblem(problem, { preferred: placementsOf(current) });
  return improve(compiled, firstState(compiled.model, createState(compiled.model), control.seed), control);
}

export function improve(
  compiled: CompiledProblem,
  start: ReturnType<typeof createState>,
  { onBetter, ...control }: PlannerControl,
): PlannerOutcome {
  onBetter?.(() => readPlan(compiled, start), 0);
  const outcome = searchOnGrain(compiled.model, start, {
    ...control,
    ...(onBetter === undefined
      ? {}
      : { onBetter: (state, rounds) => onBetter(() => readPlan(compiled, state), rounds) }),
  });
  ontoGrain(compiled.model, outcome.best);
  return { plan: readPlan(compiled, outcome.best), rounds: outcome.rounds };
}
