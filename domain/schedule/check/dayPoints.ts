/** Where somebody is through a day, as the checker sees it: stops of the plan and stays that no plan can move, in time. */
import type { Stop } from '../plan.ts';
import { isFixed, type PlanningProblem, type WorkDay } from '../planningProblem.ts';

export type DayPoint = {
  readonly visitId: string;
  readonly placeId: string;
  readonly fromMin: number;
  readonly toMin: number;
  /** null: a stay. */
  readonly stop: Stop | null;
};

/** The stays of a day, and recorded visits that the plan left out; one that begins after the hours begins as they end. */
export function stayPoints(
  problem: PlanningProblem,
  technicianId: string,
  day: WorkDay,
  plannedVisitIds: ReadonlySet<string>,
): readonly DayPoint[] {
  const recorded = problem.visits.flatMap((visit) => {
    const { pin, visitId, placeId } = visit;
    if (!isFixed(visit) || plannedVisitIds.has(visitId)) return [];
    if (pin.technicianId !== technicianId || pin.date !== day.date || pin.startMin === null) return [];
    return [{ visitId, placeId, fromMin: pin.startMin, toMin: pin.startMin + visit.durationMin }];
  });
  return [...day.stays, ...recorded]
    .filter((stay) => stay.toMin > stay.fromMin)
    .sort((a, b) => a.fromMin - b.fromMin || a.toMin - b.toMin || (a.visitId < b.visitId ? -1 : 1))
    .map(({ visitId, placeId, fromMin, toMin }) => ({
      visitId,
      placeId,
      fromMin: Math.min(fromMin, day.endMin),
      toMin,
      stop: null,
    }));
}

/** Stops as the plan has them, each stay before the first of them that begins after it does. */
export function dayPoints(
  stays: readonly DayPoint[],
  stops: readonly Stop[],
  placeOf: (visitId: string) => string,
): readonly DayPoint[] {
  const points: DayPoint[] = [];
  let at = 0;
  for (const stop of stops) {
    for (; at < stays.length && (stays[at]?.fromMin ?? 0) <= stop.startMin; at += 1) points.push(stays[at] as DayPoint);
    const { visitId, startMin: fromMin, endMin: toMin } = stop;
    points.push({ visitId, placeId: placeOf(visitId), fromMin, toMin, stop });
  }
  return [...points, ...stays.slice(at)];
}
