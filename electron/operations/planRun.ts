/** What goes to the planner's thread and what comes back; plain data both ways. */
import type { PlacementGround } from '../../domain/schedule/explainPlacement.ts';
import type { Plan } from '../../domain/schedule/plan.ts';
import type { PlanningProblem } from '../../domain/schedule/planningProblem.ts';

export type PlanOrder = {
  readonly problem: PlanningProblem;
  /** Repair what is there, or build anew. */
  readonly isRepair: boolean;
  readonly current: Pick<Plan, 'routes'>;
  readonly seed: number;
  readonly maxRounds: number;
  /** null: rounds alone set the limit. */
  readonly limitMs: number | null;
  /** One 32-bit number: anything but 0 asks the search to stop. */
  readonly cancelFlag: SharedArrayBuffer;
};

export type PlacementNote = {
  readonly visitId: string;
  readonly ground: PlacementGround;
  readonly extraTravelMin: number | null;
};

export type PlanReport =
  | { readonly kind: 'better'; readonly plan: Plan; readonly rounds: number; readonly elapsedMs: number }
  | {
      readonly kind: 'done';
      readonly plan: Plan;
      readonly rounds: number;
      readonly elapsedMs: number;
      readonly notes: readonly PlacementNote[];
      /** By how much this thread's memory has grown at its largest, bytes. */
      readonly grownBytes: number;
    };

/** Best plans are handed over at most five times a second. */
export const REPORT_EVERY_MS = 200;
