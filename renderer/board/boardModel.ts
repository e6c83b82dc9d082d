/** What the core answers, turned into rows of people with their days: where each visit lies and what does not fit. */
import { type Conflict, type Leg, planDay, type Stop } from '../../domain/schedule/dayConflicts.ts';
import type { Outing } from '../../domain/schedule/sharedInstruments.ts';
import { toTravelTable } from '../../domain/schedule/travelTable.ts';
import { boardStart, wallMinute } from '../../domain/schedule/wallClock.ts';
import type { TravelTimes } from '../../domain/schedule/wayMinutes.ts';
import { baseWayPlace, type WayPlace, wayPlaceOf } from '../../domain/schedule/wayPlace.ts';
import { type Span, workSpans } from '../../domain/schedule/workSpans.ts';
import type { BoardTechnician, BoardVisit } from '../../electron/contract/board.ts';
import type { OutputOf } from '../../electron/contract/index.ts';

export type BoardData = OutputOf<'board.get'>;

export type BoardBlock = {
  readonly visit: BoardVisit;
  /** Where it is drawn; of a visit without a time, the beginning of the day's work. */
  readonly startMin: number;
  readonly isTimeOpen: boolean;
  readonly isMovable: boolean;
  /** How many earlier ones it lies over: it is drawn that much lower, so that both can be seen. */
  readonly depth: number;
  readonly conflicts: readonly Conflict[];
};

export type BoardDay = {
  readonly on: string;
  readonly spans: readonly Span[];
  readonly away: string | null;
  readonly blocks: readonly BoardBlock[];
  readonly legs: readonly Leg[];
};

export type BoardRowModel = {
  readonly technician: BoardTechnician;
  readonly days: readonly BoardDay[];
};

/** Without hours of their own a day is drawn from here. */
const USUAL_START_MIN = 480;

export function toRows(data: BoardData, days: readonly string[]): readonly BoardRowModel[] {
  const byPerson = new Map<string, BoardVisit[]>();
  for (const visit of data.visits)
    for (const { staffId } of visit.crew) {
      const list = byPerson.get(staffId);
      if (list === undefined) byPerson.set(staffId, [visit]);
      else list.push(visit);
    }
  return data.technicians.map((technician) => {
    const byDay = Map.groupBy(byPerson.get(technician.staffId) ?? [], (visit) => visit.plannedOn);
    return { technician, days: days.map((on) => toDay(data, technician, on, byDay.get(on) ?? [])) };
  });
}

function toDay(data: BoardData, technician: BoardTechnician, on: string, visits: readonly BoardVisit[]): BoardDay {
  const spans = workSpans(technician.hours, technician.absences, on);
  const plan = planDay(
    on,
    { worker: technician, base: baseOf(data, technician) },
    visits.map(toStop),
    travelTimesOf(data),
    (visitId) => isHelping(visits, visitId, technician.staffId),
  );
  const whole = technician.absences.find((one) => one.fromOn <= on && on <= one.toOn && one.fromMin === null);
  return {
    on,
    spans,
    away: whole?.reason ?? null,
    legs: plan.legs,
    blocks: withDepth(
      visits.map((visit) => ({
        visit,
        startMin: boardStart(visit) ?? spans[0]?.fromMin ?? USUAL_START_MIN,
        isTimeOpen: boardStart(visit) === null,
        isMovable: isMovable(visit),
        conflicts: plan.conflicts.get(visit.visitId) ?? [],
      })),
    ),
  };
}

function withDepth(blocks: readonly Omit<BoardBlock, 'depth'>[]): readonly BoardBlock[] {
  const placed: BoardBlock[] = [];
  for (const block of blocks.toSorted((a, b) => a.startMin - b.startMin)) {
    const under = placed.filter((one) => one.startMin + one.visit.durationMin > block.startMin);
    placed.push({ ...block, depth: under.length });
  }
  return placed;
}

export function toStop(visit: BoardVisit): Stop {
  return {
    visitId: visit.visitId,
    on: visit.plannedOn,
    startMin: boardStart(visit),
    durationMin: visit.durationMin,
    place: wayPlaceOf(visit),
    isAhead: isMovable(visit),
    isPencilled: visit.state === 'pencilled',
    promisedFromMin: wallMinute(visit.plannedFrom),
    promisedToMin: wallMinute(visit.plannedTo),
    promisedOn: visit.promisedOn,
    jobs: visit.jobs,
  };
}

/** Who leads each visit ahead, and what they have to measure with there. */
export function outingsOf(data: Pick<BoardData, 'visits'>): readonly Outing[] {
  return data.visits.filter(isMovable).flatMap((visit) => {
    const { plannedOn, jobs } = visit;
    const lead = leadOf(visit);
    const kinds = jobs.flatMap((job) => job.instruments);
    return lead === undefined || kinds.length === 0 ? [] : [{ on: plannedOn, staffId: lead.staffId, kinds }];
  });
}

/** Whose visit it is where several go: the licensed one's, else the one's who leads. */
export function leadOf({ crew }: Pick<BoardVisit, 'crew'>): BoardVisit['crew'][number] | undefined {
  return crew.find(({ role }) => role === 'licensed') ?? crew.find(({ role }) => role === 'lead') ?? crew[0];
}

export function isMovable({ state }: Pick<BoardVisit, 'state'>): boolean {
  return state === 'pencilled' || state === 'planned';
}

export function baseOf(data: BoardData, { name, base }: BoardTechnician): WayPlace {
  return baseWayPlace(name, base, data.travel.firm);
}

const timesByAnswer = new WeakMap<BoardData['travel'], TravelTimes>();

/** Made once per answer of the core: it is asked for with every step of a visit that is carried. */
export function travelTimesOf({ travel }: Pick<BoardData, 'travel'>): TravelTimes {
  const known = timesByAnswer.get(travel);
  if (known !== undefined) return known;
  const { roadFactor, speedKmPerH, pairs } = travel;
  const times = { roadFactor, speedKmPerH, table: toTravelTable(pairs) };
  timesByAnswer.set(travel, times);
  return times;
}

function isHelping(visits: readonly BoardVisit[], visitId: string, staffId: string): boolean {
  const visit = visits.find((one) => one.visitId === visitId);
  return visit?.crew.find((member) => member.staffId === staffId)?.role === 'helper';
}
