/** What the planner answers: a proposal. Nothing changes until a person accepts it. */
import type { UnplannedReason } from './unplannedReason.ts';

export type Stop = {
  readonly visitId: string;
  readonly arriveMin: number;
  readonly startMin: number;
  readonly endMin: number;
};

export type Route = { readonly technicianId: string; readonly date: string; readonly stops: readonly Stop[] };

export type UnplannedVisit = { readonly visitId: string; readonly reasons: readonly UnplannedReason[] };

/**
 * The goals, each a whole number, less is better, the first that differs decides.
 *
 * S1 visits left out, the pressing ones first (`UNPLANNED_BASE`);
 * S2 deadlines: days late, then days closer than the safety margin (`LATE_BASE`);
 * S3 days outside the window in which service is due;
 * S4 promises to customers moved to another day or window;
 * W  what is wished of whoever goes and is lacking there: a maker's course, an instrument in date;
 * S5 minutes of travel;
 * S6 minutes of overtime and of waiting between visits;
 * S7 minutes of work by which the busiest technician is ahead of the least busy.
 *
 * A visit left out counts in S2 and S3 as if done on the day after the range: of two visits that press alike, the one
 * that can wait is left out. A promise to it counts as moved.
 */
export type Score = readonly [
  s1: number,
  s2: number,
  s3: number,
  s4: number,
  w: number,
  s5: number,
  s6: number,
  s7: number,
];

export type Plan = {
  readonly routes: readonly Route[];
  readonly unplanned: readonly UnplannedVisit[];
  readonly score: Score;
};

export type Placement = { readonly technicianId: string; readonly date: string; readonly startMin: number };

/** S1 = number of visits of each class, in this base: pinned visits first, then priority 3 … 0. */
export const UNPLANNED_BASE = 2048;
/** S2 = days late × this + days close. */
export const LATE_BASE = 100_000;

/** Negative when the first is better. */
export function compareScores(a: Score, b: Score): number {
  for (let goal = 0; goal < a.length; goal += 1) {
    const difference = (a[goal] ?? 0) - (b[goal] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

export function placementsOf(plan: Pick<Plan, 'routes'>): ReadonlyMap<string, Placement> {
  const placements = new Map<string, Placement>();
  for (const route of plan.routes) {
    for (const stop of route.stops) {
      placements.set(stop.visitId, {
        technicianId: route.technicianId,
        date: route.date,
        startMin: stop.startMin,
      });
    }
  }
  return placements;
}
