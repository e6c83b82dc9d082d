/** What would not fit if a carried visit were put down where it is, and the first place where everything would. */
import { type Conflict, planDay, type Stop } from '../../domain/schedule/dayConflicts.ts';
import { isForbidding } from '../../domain/schedule/obstacles.ts';
import { isOfPlace } from '../../domain/schedule/ofPapers.ts';
import { START_GRAIN_MIN } from '../../domain/schedule/startGrain.ts';
import { wayPlaceOf } from '../../domain/schedule/wayPlace.ts';
import { workSpans } from '../../domain/schedule/workSpans.ts';
import type { BoardTechnician, UnplacedJob } from '../../electron/contract/board.ts';
import { type BoardData, baseOf, toStop, travelTimesOf } from './boardModel.ts';
import type { Carried } from './carryStore.ts';

/** As if it lay there already, among the other visits of that person's day. */
export function carriedConflicts(data: BoardData, carried: Carried): readonly Conflict[] {
  const technician = data.technicians.find(({ staffId }) => staffId === carried.staffId);
  const stop = stopOf(data, carried);
  if (technician === undefined || stop === null) return [];
  const others = othersThat(data, technician, carried.on).filter(({ visitId }) => visitId !== stop.visitId);
  return conflictsOf(data, technician, carried.on, [...others, stop]).get(stop.visitId) ?? [];
}

export type Fit = { readonly staffId: string; readonly on: string; readonly startMin: number };

const STEP_MIN = 2 * START_GRAIN_MIN;

/** `from`: neither an earlier day nor, on that day, an earlier minute. null: in these days nothing fits as it is. */
export function findFirstFit(
  data: BoardData,
  days: readonly string[],
  job: UnplacedJob,
  from: { readonly on: string; readonly minute: number },
): Fit | null {
  for (const on of days.filter((day) => day >= from.on))
    for (const technician of data.technicians) {
      const startMin = firstFitOf(data, technician, on, job, on === from.on ? from.minute : 0);
      if (startMin !== null) return { staffId: technician.staffId, on, startMin };
    }
  return null;
}

function firstFitOf(
  data: BoardData,
  technician: BoardTechnician,
  on: string,
  job: UnplacedJob,
  notBefore: number,
): number | null {
  const others = othersThat(data, technician, on);
  // A question about where a licence counts keeps nobody from a day: it would leave no place at all.
  const before = countOf(conflictsOf(data, technician, on, others));
  for (const span of workSpans(technician.hours, technician.absences, on))
    for (
      let startMin = Math.max(span.fromMin, Math.ceil(notBefore / START_GRAIN_MIN) * START_GRAIN_MIN);
      startMin + job.suggestedMin <= span.toMin;
      startMin += STEP_MIN
    ) {
      const stop = stopOfJob(job, on, startMin, job.suggestedMin);
      const conflicts = conflictsOf(data, technician, on, [...others, stop]);
      const own = conflicts.get(stop.visitId) ?? [];
      // Whatever the hour, this person may not.
      if (own.some((one) => one.code === 'obstacle' && isForbidding(one.obstacle))) return null;
      // It must not push anybody else's visit out of what fitted either.
      if (own.every(isOfPlace) && countOf(conflicts) <= before) return startMin;
    }
  return null;
}

type Conflicts = ReadonlyMap<string, readonly Conflict[]>;

function countOf(conflicts: Conflicts): number {
  return [...conflicts.values()].reduce((sum, list) => sum + list.filter((one) => !isOfPlace(one)).length, 0);
}

function conflictsOf(data: BoardData, technician: BoardTechnician, on: string, stops: readonly Stop[]): Conflicts {
  return planDay(on, { worker: technician, base: baseOf(data, technician) }, stops, travelTimesOf(data)).conflicts;
}

function othersThat(data: BoardData, { staffId }: BoardTechnician, on: string): readonly Stop[] {
  return data.visits
    .filter((visit) => visit.plannedOn === on && visit.crew.some((member) => member.staffId === staffId))
    .map(toStop);
}

function stopOf(data: BoardData, carried: Carried): Stop | null {
  const { what, on, startMin } = carried;
  if (what.kind === 'visit') {
    const visit = data.visits.find(({ visitId }) => visitId === what.visitId);
    return visit === undefined ? null : { ...toStop(visit), on, startMin };
  }
  const job = data.unplaced.find(({ jobId }) => jobId === what.jobId);
  return job === undefined ? null : stopOfJob(job, on, startMin, carried.durationMin);
}

const CARRIED_JOB = 'carried';

function stopOfJob(job: UnplacedJob, on: string, startMin: number, durationMin: number): Stop {
  return {
    visitId: CARRIED_JOB,
    on,
    startMin,
    durationMin,
    place: wayPlaceOf(job),
    isAhead: true,
    // Booked with open readiness it would be pencilled in, never firm.
    isPencilled: true,
    promisedFromMin: null,
    promisedToMin: null,
    promisedOn: null,
    jobs: [job],
  };
}
