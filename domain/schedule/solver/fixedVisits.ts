/**
 * Visits that have begun or are over, against their technician's day. Where they fit one after another they are stops like
 * any other; where what is recorded contradicts the day, none of that day's are planned and their time is kept closed.
 */
import {
  isFixed,
  type PlanningProblem,
  type PlanVisit,
  type Technician,
  type TimeSpan,
  type WorkDay,
} from '../planningProblem.ts';
import { endOfWork } from './endOfWork.ts';
import { travelBetween } from './listOptions.ts';

export function findContradictedVisits(problem: PlanningProblem): ReadonlySet<string> {
  const found = new Set<string>();
  const byDay = Map.groupBy(
    problem.visits.filter((visit) => isFixed(visit)),
    (visit) => JSON.stringify([visit.pin.technicianId, visit.pin.date]),
  );
  for (const visits of byDay.values()) {
    if (!fitsTogether(problem, visits)) for (const visit of visits) found.add(visit.visitId);
  }
  return found;
}

function fitsTogether(problem: PlanningProblem, visits: readonly PlanVisit[]): boolean {
  const pin = visits[0]?.pin;
  const technician = problem.technicians.find((one) => one.technicianId === pin?.technicianId);
  const day = technician?.days.find((one) => one.date === pin?.date);
  if (technician === undefined || day === undefined || day.isAbsent) return false;
  const closed = mergeSpans(day.breaks);
  const travel = travelBetween(problem);
  let at = day.startMin;
  let placeId = technician.homePlaceId;
  const inOrder = [...visits].sort(
    (a, b) => (a.pin.startMin ?? 0) - (b.pin.startMin ?? 0) || a.visitId.localeCompare(b.visitId),
  );
  for (const visit of inOrder) {
    const start = visit.pin.startMin;
    if (start === null || start < at) return false;
    if (openMinutes(closed, at, start) < travel(placeId, visit.placeId)) return false;
    const over = endOfWork(closed, start, visit);
    if (over === null) return false;
    at = over;
    placeId = visit.placeId;
  }
  return at <= day.endMin && openMinutes(closed, at, day.endMin) >= travel(placeId, technician.homePlaceId);
}

function openMinutes(closed: readonly TimeSpan[], from: number, to: number): number {
  let open = to - from;
  for (const span of closed) open -= Math.max(0, Math.min(span.toMin, to) - Math.max(span.fromMin, from));
  return open;
}

/** Breaks, and the time of contradicted visits, in order and without overlap. */
export function closedSpansOf(
  problem: PlanningProblem,
  technician: Technician,
  day: WorkDay,
  contradicted: ReadonlySet<string>,
  alsoClosed: readonly (TimeSpan & { readonly technicianId: string; readonly date: string })[] = [],
): readonly TimeSpan[] {
  const recorded = problem.visits.flatMap((visit): TimeSpan[] => {
    const { technicianId, date, startMin } = visit.pin;
    const isHere = technicianId === technician.technicianId && date === day.date;
    return isHere && startMin !== null && contradicted.has(visit.visitId)
      ? [{ fromMin: startMin, toMin: startMin + visit.durationMin }]
      : [];
  });
  const others = alsoClosed.filter((one) => one.technicianId === technician.technicianId && one.date === day.date);
  return mergeSpans([...day.breaks, ...recorded, ...others]);
}

function mergeSpans(spans: readonly TimeSpan[]): readonly TimeSpan[] {
  const merged: TimeSpan[] = [];
  for (const span of spans.filter((one) => one.toMin > one.fromMin).sort((a, b) => a.fromMin - b.fromMin)) {
    const last = merged.at(-1);
    if (last === undefined || span.fromMin > last.toMin) merged.push(span);
    else merged[merged.length - 1] = { fromMin: last.fromMin, toMin: Math.max(last.toMin, span.toMin) };
  }
  return merged;
}
