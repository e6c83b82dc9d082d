/** The goals of a state as whole numbers, and one soft number from them for the search to wander by. */
import type { RouteState } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';

/** S1 … S4, W, S5 … S7; S5 with what starts off the grain cost. */
export type Goals = Float64Array;

const GOALS = 8;

export function newGoals(): Goals {
  return new Float64Array(GOALS);
}

export function countGoals(model: RoutingModel, state: RouteState, goals: Goals, workScratch: Float64Array): void {
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let w = 0;
  let offGrain = 0;
  for (let visit = 0; visit < model.visitCount; visit += 1) {
    const option = state.optionOf[visit] as number;
    if (option < 0) {
      s1 += model.outS1[visit] as number;
      s2 += model.outS2[visit] as number;
      s3 += model.outS3[visit] as number;
      s4 += model.outS4[visit] as number;
    } else {
      s2 += model.optionS2[option] as number;
      s3 += model.optionS3[option] as number;
      s4 += model.optionS4[option] as number;
      w += model.optionW[option] as number;
      offGrain += model.optionOffGrain[option] as number;
    }
  }
  let s5 = offGrain;
  let s6 = 0;
  workScratch.fill(-1);
  for (let route = 0; route < model.routeCount; route += 1) {
    s5 += state.travel[route] as number;
    if (!model.countsTime) continue;
    s6 += state.idle[route] as number;
    const technician = model.routeTechnician[route] as number;
    workScratch[technician] = Math.max(0, workScratch[technician] as number) + (state.work[route] as number);
  }
  goals[0] = s1;
  goals[1] = s2;
  goals[2] = s3;
  goals[3] = s4;
  goals[4] = w;
  goals[5] = s5;
  goals[6] = s6;
  goals[7] = model.countsTime ? spread(workScratch) : 0;
}

/** Technicians without a day in the range (−1) are not in the balance. */
function spread(work: Float64Array): number {
  let most = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < work.length; at += 1) {
    const value = work[at] as number;
    if (value < 0) continue;
    if (value > most) most = value;
    if (value < least) least = value;
  }
  return most < 0 ? 0 : most - least;
}

/** Negative when the first is better. */
export function compareGoals(a: Goals, b: Goals): number {
  for (let goal = 0; goal < GOALS; goal += 1) {
    const difference = (a[goal] as number) - (b[goal] as number);
    if (difference !== 0) return difference;
  }
  return 0;
}

/**
 * In minutes of travel: near enough for the search to walk through a worse plan towards a better one. Which plan is kept
 * is decided by the goals themselves, one after the other.
 */
export function softCost(model: RoutingModel, state: RouteState, goals: Goals, travelPerUnit: number): number {
  let soft = goals[5] as number;
  for (let visit = 0; visit < model.visitCount; visit += 1) {
    if ((state.routeOf[visit] as number) < 0 && (model.outS1[visit] as number) > 0)
      soft += travelPerUnit * 40 * (1 + (model.pressing[visit] as number));
  }
  soft += softly(goals[1] as number, travelPerUnit) + softly(goals[2] as number, travelPerUnit);
  soft += softly(goals[3] as number, travelPerUnit) + softly(goals[4] as number, travelPerUnit);
  return soft + (goals[6] as number) / 16 + (goals[7] as number) / 128;
}

/** Grows with the logarithm's calm: a day late weighs much, the hundredth day late not a hundred times as much. */
function softly(value: number, travelPerUnit: number): number {
  return value <= 0 ? 0 : travelPerUnit * 8 * Math.sqrt(value);
}
