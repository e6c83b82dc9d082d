/**
 * Work that is longer than anybody's day: whole days in a row of one person, one visit a day. Such work fills its days, so there
 * is little to search for: the first days on which somebody who may do it has the room beside what is booked are taken as they
 * are, and everything else is planned around them.
 */
import { checkRoutes } from './check/checkRoutes.ts';
import type { Route, Stop } from './plan.ts';
import {
  LONGEST_PAUSE_MIN,
  type PlanningProblem,
  type PlanVisit,
  type Technician,
  type WorkDay,
} from './planningProblem.ts';
import { endOfWork } from './solver/endOfWork.ts';
import { closedSpansOf } from './solver/fixedVisits.ts';
import { hasSkill, type TravelBetween, travelBetween } from './solver/listOptions.ts';
import { onGrainFrom, onGrainUntil } from './startGrain.ts';

/** Common practice, no source: nobody drives out again for less; the days before then end that much earlier. */
export const SHORTEST_LAST_DAY_MIN = 60;

type Room = {
  readonly technician: Technician;
  readonly day: WorkDay;
  readonly startMin: number;
  readonly workMin: number;
};

/** Somebody may do it, and nobody who may has a day long enough, were nothing else planned. */
export function findLongerThanADay(problem: PlanningProblem, visits: readonly PlanVisit[]): readonly PlanVisit[] {
  const travel = travelBetween(problem);
  return visits.filter((visit) => {
    const rooms = problem.technicians
      .flatMap((technician) => roomsOf(problem.grainMin, travel, visit, technician))
      .filter(({ workMin }) => workMin > 0);
    return rooms.length > 0 && rooms.every(({ workMin }) => workMin < visit.durationMin);
  });
}

/**
 * The visit as one for each day, pinned where they are; null: in these days nobody has that many in a row. `booked` are the
 * rounds that stay. Who lacks fewest wishes goes, then who is ready first.
 */
export function overDaysInARow(
  problem: PlanningProblem,
  booked: readonly Route[],
  visit: PlanVisit,
): readonly PlanVisit[] | null {
  const travel = travelBetween(problem);
  const found = problem.technicians.flatMap((technician) => {
    const rooms = roomsOf(problem.grainMin, travel, visit, technician);
    const fits = (parts: readonly PlanVisit[] | null): boolean =>
      parts !== null && fitsBeside(problem, booked, technician, parts);
    const first = rooms.findIndex((_room, at) => fits(partsFrom(visit, rooms.slice(at))));
    const parts = first < 0 ? null : partsFrom(visit, rooms.slice(first));
    return parts === null ? [] : [{ parts, lacking: lackingOf(visit, technician, parts), readyOn: lastDayOf(parts) }];
  });
  const [best] = found.toSorted(
    (a, b) => a.lacking - b.lacking || (a.readyOn < b.readyOn ? -1 : a.readyOn > b.readyOn ? 1 : 0),
  );
  return best?.parts ?? null;
}

export function partId(visitId: string, number: number): string {
  return `${visitId} day ${number}`;
}

/** The working days on which this person may do it, with the longest work that leaves time for the ways there and back. */
function roomsOf(grainMin: number, travel: TravelBetween, visit: PlanVisit, technician: Technician): readonly Room[] {
  return technician.days
    .filter((day) => !day.isAbsent)
    .toSorted((a, b) => (a.date < b.date ? -1 : 1))
    .map((day): Room => {
      const startMin = onGrainFrom(day.startMin + travel(technician.homePlaceId, visit.placeId), grainMin);
      const isOpen =
        visit.needs.every((code) => hasSkill(technician, code, day.date)) &&
        (visit.windows?.some(
          ({ date, fromMin, toMin }) => date === day.date && fromMin <= startMin && startMin <= toMin,
        ) ??
          true);
      const backMin = day.endMin - travel(visit.placeId, technician.homePlaceId);
      return { technician, day, startMin, workMin: isOpen ? longestWork(day, startMin, backMin, grainMin) : 0 };
    });
}

function longestWork(day: WorkDay, startMin: number, backMin: number, grainMin: number): number {
  const closed = closedSpansOf(day).filter((span) => span.toMin > startMin && span.fromMin < backMin);
  const long = closed.find((span) => span.toMin - span.fromMin > LONGEST_PAUSE_MIN || span.fromMin <= startMin);
  const untilMin = long?.fromMin ?? backMin;
  const pausedMin = closed
    .filter((span) => span.fromMin < untilMin)
    .reduce((sum, span) => sum + Math.min(span.toMin, untilMin) - span.fromMin, 0);
  return Math.max(0, onGrainUntil(untilMin - startMin - pausedMin, grainMin));
}

/** As long as it takes from the first of these days on; null: they are too few, or one of them has no room. */
function partsFrom(visit: PlanVisit, rooms: readonly Room[]): readonly PlanVisit[] | null {
  const lengths: number[] = [];
  let leftMin = visit.durationMin;
  for (const { workMin } of rooms) {
    if (leftMin === 0) break;
    const most = Math.min(workMin, leftMin);
    if (most === 0) return null;
    // What is left for the last day is made worth the way.
    const left = leftMin - most;
    const worthMin = left > 0 && left < SHORTEST_LAST_DAY_MIN ? most - (SHORTEST_LAST_DAY_MIN - left) : most;
    if (worthMin <= 0) return null;
    lengths.push(worthMin);
    leftMin -= worthMin;
  }
  if (leftMin > 0) return null;
  return lengths.map((durationMin, at): PlanVisit => {
    const room = rooms[at];
    const isLast = at === lengths.length - 1;
    return {
      ...visit,
      visitId: partId(visit.visitId, at + 1),
      durationMin,
      mayPause: true,
      pin: {
        technicianId: room?.technician.technicianId ?? null,
        date: room?.day.date ?? null,
        startMin: room?.startMin ?? null,
      },
      afterVisitId: at === 0 ? visit.afterVisitId : partId(visit.visitId, at),
      // In time is whoever is ready in time.
      ...(isLast ? {} : { deadline: null, deadlineKind: 'none' as const, dueFrom: null, dueTo: null }),
    };
  });
}

/** Whether every rule holds with these on the rounds that are booked; asked of the checker, so that nothing is taken on trust. */
function fitsBeside(
  problem: PlanningProblem,
  booked: readonly Route[],
  technician: Technician,
  parts: readonly PlanVisit[],
): boolean {
  const { technicianId } = technician;
  const routes = parts.map((part): Route => {
    const date = part.pin.date ?? '';
    const day = technician.days.find((one) => one.date === date);
    const closed = day === undefined ? [] : closedSpansOf(day);
    const stopOf = (visit: PlanVisit, startMin: number): Stop => ({
      visitId: visit.visitId,
      arriveMin: startMin,
      startMin,
      endMin: endOfWork(closed, startMin, visit) ?? startMin + visit.durationMin,
    });
    const others = booked.find((one) => one.technicianId === technicianId && one.date === date)?.stops ?? [];
    const stops = others.flatMap(({ visitId, startMin }) => {
      const visit = problem.visits.find((one) => one.visitId === visitId);
      return visit === undefined ? [] : [stopOf(visit, startMin)];
    });
    stops.push(stopOf(part, part.pin.startMin ?? 0));
    return { technicianId, date, stops: stops.toSorted((a, b) => a.startMin - b.startMin) };
  });
  return checkRoutes({ ...problem, visits: [...problem.visits, ...parts] }, { routes }).length === 0;
}

function lackingOf(visit: PlanVisit, technician: Technician, parts: readonly PlanVisit[]): number {
  return parts.reduce(
    (sum, { pin }) => sum + visit.wishes.filter((code) => !hasSkill(technician, code, pin.date ?? '')).length,
    0,
  );
}

function lastDayOf(parts: readonly PlanVisit[]): string {
  return parts.at(-1)?.pin.date ?? '';
}
