/** A range of days of the store as the planner takes it: people, visits on the board, jobs that wait, ways between them. */
import { Temporal } from 'temporal-polyfill';
import { listServiceWindows, type ServiceWindow } from '../../db/dues/serviceWindows.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany } from '../../db/people.ts';
import { findVisit, listJobsOverDays } from '../../db/visits.ts';
import { addDays, minuteOfWallTime, minutesOfDay, wallTimeOfMinute } from '../../domain/schedule/dayMinutes.ts';
import { findLongerThanADay, overDaysInARow } from '../../domain/schedule/daysInARow.ts';
import { findDisplaced } from '../../domain/schedule/findDisplaced.ts';
import type { Placement, Plan, UnplannedVisit } from '../../domain/schedule/plan.ts';
import {
  NO_PIN,
  type Place,
  type PlanningProblem,
  type PlanVisit,
  type Stay,
  type VisitWindow,
  type WorkDay,
} from '../../domain/schedule/planningProblem.ts';
import { codeOf, mustsOf, spansOf, wishesOf } from '../../domain/schedule/qualifications.ts';
import { START_GRAIN_MIN } from '../../domain/schedule/startGrain.ts';
import { travelFromTimes } from '../../domain/schedule/travelMatrix.ts';
import { toTravelTable } from '../../domain/schedule/travelTable.ts';
import { wallMinute } from '../../domain/schedule/wallClock.ts';
import { baseWayPlace, type WayPlace, wayPlaceOf } from '../../domain/schedule/wayPlace.ts';
import { absencesOn, hoursOn } from '../../domain/schedule/workSpans.ts';
import type { BoardJob, BoardTechnician, BoardVisit, UnplacedJob } from '../contract/board.ts';
import { readBoard } from './boardRows.ts';
import { notFound } from './handler.ts';
import { dayIn } from './today.ts';

export type PlanSource =
  | { readonly kind: 'visit'; readonly visit: BoardVisit }
  | { readonly kind: 'job'; readonly job: UnplacedJob; readonly part: JobPart | null };

/** One of the days of a job that is longer than a day. */
export type JobPart = { readonly number: number; readonly of: number; readonly durationMin: number };

export type PlanningBasis = {
  readonly problem: PlanningProblem;
  /** By the id of the planner's visit: of a visit on the board, or of a job that waits. */
  readonly sources: ReadonlyMap<string, PlanSource>;
  /** Where visits on the board are now, as the planner counts minutes. */
  readonly current: ReadonlyMap<string, Placement>;
  readonly notReady: readonly UnplacedJob[];
  /** Waiting jobs that nobody could do in one day. */
  readonly longer: ReadonlySet<string>;
  /** Held visits that break a rule where they are: they stay there, and others are planned around them. */
  readonly standing: readonly UnplannedVisit[];
  readonly technicians: readonly BoardTechnician[];
  readonly timeZone: string;
  readonly assumedPlaces: number;
};

export type PlanningQuestion = {
  readonly from: string;
  readonly to: string;
  readonly now: string;
  /** What is placed stays with its technician, on its day and at its start. */
  readonly holdsPlaced: boolean;
  /** Which waiting jobs are to be planned; null: all. */
  readonly jobIds: readonly string[] | null;
  readonly takesNotReady: boolean;
  /** A job longer than a day becomes a visit for each of several days in a row. */
  readonly takesSeveralDays: boolean;
};

/** Common practice, no source: work this long is not done without a break, so it may be left for one. */
const LONG_WORK_MIN = 150;
/** The highest priority. */
const BEFORE_EVERYTHING = 3;
/** Common practice: fewer days than this before a deadline are too few to come back in. */
const SAFETY_MARGIN_DAYS = 3;

export function readPlanningProblem(db: ReadableDb, question: PlanningQuestion): PlanningBasis {
  const { timeZone } = findCompany(db) ?? notFound('companies', 'this');
  const today = dayIn(timeZone, question.now);
  const board = readBoard(db, question, today);
  const dates: string[] = [];
  for (let date = question.from; date <= question.to; date = addDays(date, 1)) dates.push(date);
  const technicians = board.technicians.filter((one) => one.roles.includes('technician'));
  const jobs = board.unplaced.filter((job) => question.jobIds?.includes(job.jobId) ?? true);
  const taken = jobs.filter(
    (job) => question.takesNotReady || job.kind !== 'startup' || job.openReadiness.length === 0,
  );
  const nowMin = minuteOf(today, Temporal.Instant.from(question.now), timeZone);
  const openFrom = (date: string): number => (date === today ? nowMin : 0);
  const overDays = listJobsOverDays(
    db,
    board.visits.flatMap((visit) => visit.jobs.map(({ jobId }) => jobId)),
  );
  const windows = listServiceWindows(
    db,
    [...board.visits.flatMap((visit) => visit.jobs), ...jobs].map(({ applianceId }) => applianceId),
  );
  const visits: PlanVisit[] = [];
  const sources = new Map<string, PlanSource>();
  const current = new Map<string, Placement>();
  /** Of people who go along without leading. */
  const alongside = new Map<string, Stay[]>();

  for (const visit of board.visits) {
    const lead = leadOf(visit, technicians);
    const isRecorded = !['pencilled', 'planned'].includes(visit.state);
    const startMin = startOf(db, visit, timeZone);
    for (const member of visit.crew) {
      if (member.staffId === lead || startMin === null) continue;
      const key = dayKey(member.staffId, visit.plannedOn);
      const { visitId, siteId: placeId } = visit;
      const stay = { visitId, placeId, fromMin: startMin, toMin: startMin + visit.durationMin };
      alongside.set(key, [...(alongside.get(key) ?? []), stay]);
    }
    // Nobody of those planned here goes, or nothing is known of its time: it stands beside the plan.
    if (isRecorded && (lead === null || startMin === null)) continue;
    if (lead === null && visit.crew.length > 0) continue;
    sources.set(visit.visitId, { kind: 'visit', visit });
    if (lead !== null && startMin !== null)
      current.set(visit.visitId, { technicianId: lead, date: visit.plannedOn, startMin });
    const promised = promiseOf(visit, timeZone);
    // Work over several days is one piece: it is moved by hand, all of it.
    const isOverDays = visit.jobs.some(({ jobId }) => overDays.has(jobId));
    const isHeld = isRecorded || question.holdsPlaced || visit.crew.length > 1 || isOverDays;
    visits.push({
      ...demandsOf(visit.jobs, question, windows),
      visitId: visit.visitId,
      placeId: visit.siteId,
      durationMin: visit.durationMin,
      mayPause: isRecorded || visit.durationMin >= LONG_WORK_MIN,
      windows: isRecorded ? null : windowsOf(visit.jobs, dates, openFrom, timeZone, visit.plannedOn),
      pin: {
        technicianId: isHeld || visit.isTechnicianPinned ? lead : null,
        date: isHeld || visit.isDayPinned ? visit.plannedOn : null,
        startMin: isHeld || visit.isStartPinned ? startMin : null,
      },
      promised,
      afterVisitId: null,
      state: isRecorded ? (visit.state === 'finished' || visit.state === 'signed' ? visit.state : 'begun') : 'open',
    });
  }
  for (const job of taken) {
    sources.set(job.jobId, { kind: 'job', job, part: null });
    visits.push({
      ...demandsOf([job], question, windows),
      visitId: job.jobId,
      placeId: job.siteId,
      durationMin: job.suggestedMin,
      mayPause: job.suggestedMin >= LONG_WORK_MIN,
      windows: windowsOf([job], dates, openFrom, timeZone, null),
      pin: NO_PIN,
      promised: null,
      afterVisitId: null,
      state: 'open',
    });
  }

  const ways = waysOf(board, visits, sources, technicians);
  const places: Place[] = [...ways].map(([placeId, { at }]) => ({ placeId, at }));
  const table = toTravelTable(board.travel.pairs);
  const works = [...sources.values()].flatMap(jobsOf);
  const asked = [...new Map([...mustsOf(works), ...wishesOf(works)].map((one) => [codeOf(one), one])).values()];
  const problem: PlanningProblem = {
    places,
    travel: travelFromTimes(places, ways, { ...board.travel, table }),
    technicians: technicians.map((one) => ({
      technicianId: one.staffId,
      homePlaceId: homeOf(one),
      skills: asked.flatMap((what) => spansOf(one, what)),
      days: dates.flatMap((date) => dayOf(one, date, timeZone, alongside.get(dayKey(one.staffId, date)) ?? [])),
    })),
    visits,
    firstDate: question.from,
    lastDate: question.to,
    grainMin: START_GRAIN_MIN,
    safetyMarginDays: SAFETY_MARGIN_DAYS,
  };
  const settled = setStandingAside(problem, current);
  const longer = longerThanADay(settled.problem, sources);
  return {
    ...settled,
    problem: question.takesSeveralDays ? splitOverDays(settled.problem, longer, current, sources) : settled.problem,
    longer,
    sources,
    current,
    notReady: jobs.filter((job) => !taken.includes(job)),
    technicians,
    timeZone,
    assumedPlaces: [...ways.values()].filter(({ at, names }) => at === null && !names.some((name) => table.has(name)))
      .length,
  };
}

function longerThanADay(problem: PlanningProblem, sources: ReadonlyMap<string, PlanSource>): ReadonlySet<string> {
  const waiting = problem.visits.filter(({ visitId }) => sources.get(visitId)?.kind === 'job');
  return new Set(findLongerThanADay(problem, waiting).map(({ visitId }) => visitId));
}

/** Beside what is on the board, in the order in which the jobs press; one that finds no days in a row stays whole. */
function splitOverDays(
  problem: PlanningProblem,
  longer: ReadonlySet<string>,
  current: ReadonlyMap<string, Placement>,
  sources: Map<string, PlanSource>,
): PlanningProblem {
  let split = problem;
  const booked = new Map(current);
  for (const visitId of longer) {
    const visit = problem.visits.find((one) => one.visitId === visitId);
    const source = sources.get(visitId);
    if (visit === undefined || source?.kind !== 'job') continue;
    const parts = overDaysInARow(split, currentRoutes({ problem: split, current: booked }), visit);
    if (parts === null) continue;
    split = { ...split, visits: [...split.visits.filter((one) => one !== visit), ...parts] };
    for (const [at, { visitId: partId, durationMin, pin }] of parts.entries()) {
      sources.set(partId, { ...source, part: { number: at + 1, of: parts.length, durationMin } });
      const { technicianId, date, startMin } = pin;
      if (technicianId !== null && date !== null && startMin !== null)
        booked.set(partId, { technicianId, date, startMin });
    }
    sources.delete(visitId);
  }
  return split;
}

/**
 * A dispatcher may have put a visit where the planner would not: too early to be there, over the end of the day, upon
 * another. Held there by its pins it can't be planned, but its place and its time are there to be planned around.
 */
function setStandingAside(
  problem: PlanningProblem,
  current: ReadonlyMap<string, Placement>,
): Pick<PlanningBasis, 'problem' | 'standing'> {
  const held = problem.visits.filter(
    ({ visitId, pin }) =>
      current.has(visitId) && pin.technicianId !== null && pin.date !== null && pin.startMin !== null,
  );
  const alone = { ...problem, visits: held };
  const standing = findDisplaced(alone, { routes: currentRoutes({ problem: alone, current }) });
  if (standing.length === 0) return { problem, standing };
  const aside = new Set(standing.map(({ visitId }) => visitId));
  const there = held.filter(({ visitId }) => aside.has(visitId));
  return {
    standing,
    problem: {
      ...problem,
      visits: problem.visits.filter(({ visitId }) => !aside.has(visitId)),
      technicians: problem.technicians.map((technician) => ({
        ...technician,
        days: technician.days.map((day) => ({
          ...day,
          stays: [
            ...day.stays,
            ...there
              .filter(({ pin }) => pin.technicianId === technician.technicianId && pin.date === day.date)
              .map(({ visitId, placeId, pin, durationMin }) => ({
                visitId,
                placeId,
                fromMin: pin.startMin ?? 0,
                toMin: (pin.startMin ?? 0) + durationMin,
              })),
          ],
        })),
      })),
    },
  };
}

/** The board as a plan: what a repair starts from. */
export function currentRoutes({ current, problem }: Pick<PlanningBasis, 'current' | 'problem'>): Plan['routes'] {
  const byDay = Map.groupBy(
    problem.visits.filter((visit) => current.has(visit.visitId)),
    (visit) => {
      const at = current.get(visit.visitId);
      return JSON.stringify([at?.technicianId, at?.date]);
    },
  );
  return [...byDay].map(([key, visits]) => {
    const [technicianId = '', date = ''] = JSON.parse(key) as string[];
    const stops = visits.map(({ visitId, durationMin }) => {
      const startMin = current.get(visitId)?.startMin ?? 0;
      return { visitId, arriveMin: startMin, startMin, endMin: startMin + durationMin };
    });
    return { technicianId, date, stops: stops.sort((a, b) => a.startMin - b.startMin) };
  });
}

/** Minutes as the board counts them: by the clock on the wall. */
export function toWallMinute(date: string, minute: number, timeZone: string): number {
  if (minute >= minutesOfDay(date, timeZone)) return 1440;
  return wallMinute(wallTimeOfMinute(date, minute, timeZone));
}

export function fromWallMinute(date: string, wallMinute: number, timeZone: string): number {
  if (wallMinute >= 1440) return minutesOfDay(date, timeZone);
  const text = `${String(Math.floor(wallMinute / 60)).padStart(2, '0')}:${String(wallMinute % 60).padStart(2, '0')}`;
  return minuteOfWallTime(date, text, timeZone);
}

function minuteOf(date: string, instant: Temporal.Instant, timeZone: string): number {
  const midnight = Temporal.PlainDate.from(date).toZonedDateTime(timeZone).epochMilliseconds;
  return Math.ceil((instant.epochMilliseconds - midnight) / 60_000);
}

function dayKey(staffId: string, date: string): string {
  return `${staffId} ${date}`;
}

/** Who the visit is planned with: the licensed one of the crew, else the one who leads it, else the first. */
function leadOf({ crew }: BoardVisit, technicians: readonly BoardTechnician[]): string | null {
  const able = crew.filter((member) => technicians.some((one) => one.staffId === member.staffId));
  const lead =
    able.find((member) => member.role === 'licensed') ?? able.find((member) => member.role === 'lead') ?? able[0];
  return lead?.staffId ?? null;
}

/** A visit that has begun without a planned start began when it was begun. */
function startOf(db: ReadableDb, visit: BoardVisit, timeZone: string): number | null {
  if (visit.startMin !== null) return fromWallMinute(visit.plannedOn, visit.startMin, timeZone);
  if (visit.state === 'pencilled' || visit.state === 'planned') return null;
  const startedAt = findVisit(db, visit.visitId)?.startedAt ?? null;
  if (startedAt === null || dayIn(timeZone, startedAt) !== visit.plannedOn) return null;
  return minuteOf(visit.plannedOn, Temporal.Instant.from(startedAt), timeZone);
}

/** What the customer was told; hours of arrival on file count as told for the day they are on, as they do on the board. */
function promiseOf(visit: BoardVisit, timeZone: string): VisitWindow | null {
  const { plannedFrom, plannedTo } = visit;
  const date = visit.promisedOn ?? (plannedFrom === null && plannedTo === null ? null : visit.plannedOn);
  if (date === null) return null;
  return {
    date,
    fromMin: plannedFrom === null ? 0 : minuteOfWallTime(date, plannedFrom, timeZone),
    toMin: plannedTo === null ? minutesOfDay(date, timeZone) : minuteOfWallTime(date, plannedTo, timeZone),
  };
}

/** Days that suit the customer, none of it before now; the day it is on has been agreed, whatever was wished for. */
function windowsOf(
  jobs: readonly BoardJob[],
  dates: readonly string[],
  openFrom: (date: string) => number,
  timeZone: string,
  plannedOn: string | null,
): readonly VisitWindow[] {
  return dates
    .filter(
      (date) =>
        date === plannedOn ||
        jobs.every(
          ({ wantedFromOn, wantedToOn }) =>
            (wantedFromOn === null || wantedFromOn <= date) && (wantedToOn === null || date <= wantedToOn),
        ),
    )
    .map((date) => ({ date, fromMin: openFrom(date), toMin: minutesOfDay(date, timeZone) }))
    .filter((window) => window.fromMin <= window.toMin);
}

type Demands = Pick<PlanVisit, 'needs' | 'wishes' | 'deadline' | 'deadlineKind' | 'priority' | 'dueFrom' | 'dueTo'>;

export function jobsOf(source: PlanSource): readonly BoardJob[] {
  return source.kind === 'visit' ? source.visit.jobs : [source.job];
}

/**
 * What comes before everything else is due on the first of the days: each later one counts against it. A service is due in
 * its window; one opened before that begins is wanted early, and by somebody who knew.
 */
function demandsOf(
  jobs: readonly BoardJob[],
  days: Pick<PlanningQuestion, 'from' | 'to'>,
  windows: ReadonlyMap<string, ServiceWindow>,
): Demands {
  const latest = jobs.flatMap((job) => (job.latestOn === null ? [] : [job.latestOn])).sort();
  const due = jobs.flatMap((job) => windows.get(job.jobId) ?? []).filter(({ windowFrom }) => windowFrom <= days.to);
  const dueTo = [
    ...due.map(({ latestOn }) => latestOn),
    ...(jobs.some((job) => job.priority === BEFORE_EVERYTHING) ? [days.from] : []),
  ].sort();
  return {
    needs: [...new Set(mustsOf(jobs).map(codeOf))],
    wishes: [...new Set(wishesOf(jobs).map(codeOf))],
    deadline: latest[0] ?? null,
    deadlineKind: latest.length === 0 ? 'none' : jobs.some((job) => job.kind === 'startup') ? 'warranty' : 'service',
    priority: Math.max(0, ...jobs.map((job) => job.priority)) as Demands['priority'],
    dueFrom:
      due
        .map(({ windowFrom }) => windowFrom)
        .sort()
        .at(-1) ?? null,
    dueTo: dueTo[0] ?? null,
  };
}

function dayOf(person: BoardTechnician, date: string, timeZone: string, stays: readonly Stay[]): readonly WorkDay[] {
  const hours = hoursOn(person.hours, date);
  const isEmployed = person.activeFrom <= date && (person.activeTo === null || date <= person.activeTo);
  if (hours === undefined || !isEmployed) return [];
  const minute = (wall: number): number => fromWallMinute(date, wall, timeZone);
  const away = absencesOn(person.absences, date);
  const isAbsent = away.some((one) => one.fromMin === null || one.toMin === null);
  const breaks = away.flatMap(({ fromMin, toMin }) =>
    fromMin === null || toMin === null ? [] : [{ fromMin: minute(fromMin), toMin: minute(toMin) }],
  );
  if (hours.breakFromMin !== null && hours.breakToMin !== null)
    breaks.push({ fromMin: minute(hours.breakFromMin), toMin: minute(hours.breakToMin) });
  const endMin = minute(hours.toMin);
  return [
    {
      date,
      startMin: minute(hours.fromMin),
      endMin,
      ordinaryEndMin: endMin,
      breaks,
      stays,
      isAbsent,
    },
  ];
}

function homeOf(person: BoardTechnician): string {
  return `base of ${person.staffId}`;
}

/** By the id of each place, where it is and what a table of travel times may call it. */
function waysOf(
  board: ReturnType<typeof readBoard>,
  visits: readonly PlanVisit[],
  sources: ReadonlyMap<string, PlanSource>,
  technicians: readonly BoardTechnician[],
): ReadonlyMap<string, WayPlace> {
  const places = new Map<string, WayPlace>();
  for (const { visitId, placeId } of visits) {
    const source = sources.get(visitId);
    const site = source?.kind === 'visit' ? source.visit : source?.job;
    places.set(placeId, site === undefined ? { at: null, names: [] } : wayPlaceOf(site));
  }
  for (const person of technicians)
    places.set(homeOf(person), baseWayPlace(person.name, person.base, board.travel.firm));
  return places;
}
