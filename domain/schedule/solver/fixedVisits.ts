/**
 * Visits that have begun or are over, against their technician's day. Where they fit one after another they are stops like
 * any other; where what is recorded contradicts the day, none of that day's are planned and they are stays.
 */
import {
  isFixed,
  type PlanningProblem,
  type PlanVisit,
  type Stay,
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
  let isLastAVisit = false;
  const stays = staysOf(problem, technician, day, new Set());
  const inOrder = [...stays, ...visits].sort(
    (a, b) => beginningOf(a) - beginningOf(b) || a.visitId.localeCompare(b.visitId),
  );
  for (const visit of inOrder) {
    if (!('pin' in visit)) {
      if (isLastAVisit && openMinutes(closed, at, visit.fromMin) < travel(placeId, visit.placeId)) return false;
      at = Math.max(at, visit.toMin);
      placeId = visit.placeId;
      isLastAVisit = false;
      continue;
    }
    const start = visit.pin.startMin;
    if (start === null || start < at) return false;
    if (openMinutes(closed, at, start) < travel(placeId, visit.placeId)) return false;
    const over = endOfWork(closed, start, visit);
    if (over === null) return false;
    at = over;
    placeId = visit.placeId;
    isLastAVisit = true;
  }
  if (!isLastAVisit) return true;
  return at <= day.endMin && openMinutes(closed, at, day.endMin) >= travel(placeId, technician.homePlaceId);
}

function openMinutes(closed: readonly TimeSpan[], from: number, to: number): number {
  let open = to - from;
  for (const span of closed) open -= Math.max(0, Math.min(span.toMin, to) - Math.max(span.fromMin, from));
  return open;
}

function beginningOf(one: PlanVisit | Stay): number {
  return 'pin' in one ? (one.pin.startMin ?? 0) : one.fromMin;
}

/** Breaks in order and without overlap. */
export function closedSpansOf(day: Pick<WorkDay, 'breaks'>): readonly TimeSpan[] {
  return mergeSpans(day.breaks);
}

export type StayOn = Stay & { readonly technicianId: string; readonly date: string };

/**
 * The stays of a day in order: its own, contradicted visits, and others; one that begins after the hours is made to begin as
 * they end.
 */
export function staysOf(
  problem: PlanningProblem,
  technician: Technician,
  day: WorkDay,
  contradicted: ReadonlySet<string>,
  others: readonly StayOn[] = [],
): readonly Stay[] {
  const isHere = (one: { readonly technicianId: string | null; readonly date: string | null }): boolean =>
    one.technicianId === technician.technicianId && one.date === day.date;
  const recorded = problem.visits.flatMap(({ visitId, placeId, durationMin, pin }): Stay[] => {
    const { startMin } = pin;
    return contradicted.has(visitId) && isHere(pin) && startMin !== null
      ? [{ visitId, placeId, fromMin: startMin, toMin: startMin + durationMin }]
      : [];
  });
  const asked = others.filter((one) => isHere(one) && !recorded.some(({ visitId }) => visitId === one.visitId));
  return [...day.stays, ...recorded, ...asked]
    .filter((stay) => stay.toMin > stay.fromMin)
    .sort((a, b) => a.fromMin - b.fromMin || a.toMin - b.toMin || (a.visitId < b.visitId ? -1 : 1))
    .map(({ visitId, placeId, fromMin, toMin }) => ({
      visitId,
      placeId,
      fromMin: Math.min(fromMin, day.endMin),
      toMin,
    }));
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
