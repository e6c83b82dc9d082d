/**
 * A broken promise that one single move would keep, found by trying them all with the checker: the visit back into its
 * promised window, every other stop at its minute, or one other stop of that day going into any other gap.
 */
import { checkRoutes } from '../../../domain/schedule/check/checkRoutes.ts';
import { countScore } from '../../../domain/schedule/check/countScore.ts';
import { compareScores, type Plan, type Route } from '../../../domain/schedule/plan.ts';
import type { PlanningProblem } from '../../../domain/schedule/planningProblem.ts';

/** null: none. */
export function findKeepablePromise(problem: PlanningProblem, plan: Plan): string | null {
  const score = countScore(problem, plan);
  const isBetter = (routes: readonly Route[]): boolean => compareScores(countScore(problem, { routes }), score) < 0;
  for (const { visitId, promised } of problem.visits) {
    if (promised === null || keeps(plan.routes, visitId, promised)) continue;
    const without = takenOut(plan.routes, visitId);
    for (const back of placesFor(problem, without, visitId, promised)) {
      if (isBetter(back)) return `${visitId} could go back`;
    }
    for (const route of without.filter((one) => one.date === promised.date)) {
      for (const other of route.stops) {
        for (const back of placesFor(problem, takenOut(without, other.visitId), visitId, promised)) {
          for (const both of placesFor(problem, back, other.visitId, null)) {
            if (isBetter(both)) return `${visitId} could go back if ${other.visitId} moved`;
          }
        }
      }
    }
  }
  return null;
}

type Window = { readonly date: string; readonly fromMin: number; readonly toMin: number };

function keeps(routes: readonly Route[], visitId: string, window: Window): boolean {
  return routes.some(
    (route) =>
      route.date === window.date &&
      route.stops.some(
        (stop) => stop.visitId === visitId && window.fromMin <= stop.startMin && stop.startMin <= window.toMin,
      ),
  );
}

function takenOut(routes: readonly Route[], visitId: string): readonly Route[] {
  return routes.map((route) => ({ ...route, stops: route.stops.filter((stop) => stop.visitId !== visitId) }));
}

/** Each gap in which it fits, at the first minute that does. */
function* placesFor(
  problem: PlanningProblem,
  routes: readonly Route[],
  visitId: string,
  window: Window | null,
): Generator<readonly Route[]> {
  const durationMin = problem.visits.find((one) => one.visitId === visitId)?.durationMin ?? 0;
  for (const { technicianId, days } of problem.technicians) {
    for (const { date, startMin, endMin } of days) {
      if (window !== null && window.date !== date) continue;
      const isHere = (route: Route): boolean => route.technicianId === technicianId && route.date === date;
      const here = routes.find(isHere)?.stops ?? [];
      const others = routes.filter((route) => !isHere(route));
      const from = Math.max(startMin, window?.fromMin ?? startMin);
      const to = Math.min(endMin - durationMin, window?.toMin ?? endMin);
      let lastGap = -1;
      for (let start = from; start <= to; start += 5) {
        if (here.some((one) => one.startMin < start + durationMin && start < one.endMin)) continue;
        const gap = here.filter((one) => one.startMin < start).length;
        if (gap === lastGap) continue;
        const stop = { visitId, arriveMin: start, startMin: start, endMin: start + durationMin };
        const stops = [...here, stop]
          .sort((a, b) => a.startMin - b.startMin)
          .map((one) => ({ ...one, arriveMin: one.startMin }));
        const tried = [...others, { technicianId, date, stops }];
        if (checkRoutes(problem, { routes: tried }).length > 0) continue;
        lastGap = gap;
        yield tried;
      }
    }
  }
}
