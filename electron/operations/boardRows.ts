/** Everything the board shows of a stretch of days, read in a handful of queries whatever the number of visits. */
import { readOpenNotices } from '../../db/openNotices.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany } from '../../db/people.ts';
import { listJobSkills, listSitePlaces, type SitePlaceRow } from '../../db/planning.ts';
import { findTravelTable } from '../../db/travelTables.ts';
import { listCrews, listJobs, listVisitJobs, listVisits } from '../../db/visits.ts';
import type { AgedAnswer } from '../../domain/procedure/agedReadiness.ts';
import type { FuelKey } from '../../domain/procedure/modelSheet.ts';
import type { OpenNotice } from '../../domain/recalls/openNotices.ts';
import { byPressing } from '../../domain/schedule/byPressing.ts';
import { expectedMinutes } from '../../domain/schedule/expectedMinutes.ts';
import { USUAL_TRAVEL } from '../../domain/schedule/travel.ts';
import { baseWayPlace, namesOf } from '../../domain/schedule/wayPlace.ts';
import { foldForSearch } from '../../domain/text/foldForSearch.ts';
import type { BoardJob, BoardTechnician, BoardVisit, UnplacedJob } from '../contract/board.ts';
import type { OutputOf } from '../contract/index.ts';
import { type AskedJob, agedReadinessOf } from './agedReadiness.ts';
import { openReadinessOf } from './bookingHandlers.ts';
import { notFound } from './handler.ts';
import { type DemandsOf, readWorkDemands } from './workDemandsOf.ts';
import { lengthsOfJobs, readWorkers, type WorkerRow } from './workers.ts';
import { toAbsence } from './workforceHandlers.ts';

type Days = { readonly from: string; readonly to: string };

/** `today`: what a call made now could still change of a visit. */
export function readBoard(db: ReadableDb, days: Days, today: string): OutputOf<'board.get'> {
  const technicians = readWorkers(db, days)
    .filter((row) => isSent(row, days))
    .map(toTechnician);
  const visits = readBoardVisits(db, days, today);
  const unplaced = readUnplaced(db, today);
  const travel = readTravel(db);
  if (travel.pairs.length === 0) return { technicians, visits, unplaced, travel };
  const names = new Set([
    ...[...visits, ...unplaced].flatMap(namesOf),
    ...technicians.flatMap(({ name, base }) => baseWayPlace(name, base, travel.firm).names),
  ]);
  const isHere = (name: string): boolean => names.has(foldForSearch(name));
  const pairs = travel.pairs.filter(({ from, to }) => isHere(from) && isHere(to));
  return { technicians, visits, unplaced, travel: { ...travel, pairs } };
}

export function readTravel(db: ReadableDb): OutputOf<'board.get'>['travel'] {
  const company = findCompany(db) ?? notFound('companies', 'this');
  return {
    roadFactor: company.travelRoadFactor ?? USUAL_TRAVEL.roadFactor,
    speedKmPerH: company.travelSpeedKmPerH ?? USUAL_TRAVEL.speedKmPerH,
    firm: {
      street: company.street,
      postcode: company.postcode,
      city: company.city,
      latitude: company.latitude,
      longitude: company.longitude,
    },
    pairs: [...(findTravelTable(db)?.pairs ?? [])],
  };
}

/** Cancelled ones are not on the board. */
export function readBoardVisits(db: ReadableDb, days: Days, today: string): BoardVisit[] {
  const rows = listVisits(db, days).filter(({ visit }) => visit.state !== 'cancelled');
  const visitIds = rows.map(({ visit }) => visit.id);
  const crews = Map.groupBy(listCrews(db, visitIds), ({ crew }) => crew.visitId);
  const jobRows = listVisitJobs(db, visitIds);
  const places = placesById(
    db,
    rows.map(({ visit }) => visit.siteId),
  );
  const ahead = new Map(
    rows.filter(({ visit }) => isAhead(visit.state)).map(({ visit }) => [visit.id, visit.plannedOn]),
  );
  const details = readJobDetails(db, jobRows, {
    today,
    asked: jobRows.flatMap(({ job, visitId }) => {
      const plannedOn = ahead.get(visitId);
      return plannedOn === undefined ? [] : [{ jobId: job.id, kind: job.kind, plannedOn }];
    }),
  });
  const jobsOf = Map.groupBy(jobRows, (row) => row.visitId);
  return rows.map(({ visit, ...who }) => ({
    visitId: visit.id,
    siteId: visit.siteId,
    ...who,
    postcode: places.get(visit.siteId)?.postcode ?? null,
    latitude: places.get(visit.siteId)?.latitude ?? null,
    longitude: places.get(visit.siteId)?.longitude ?? null,
    state: visit.state as BoardVisit['state'],
    plannedOn: visit.plannedOn,
    startMin: visit.startMin,
    durationMin: visit.durationMin,
    plannedFrom: visit.plannedFrom,
    plannedTo: visit.plannedTo,
    promisedOn: visit.promisedOn,
    isTechnicianPinned: visit.isTechnicianPinned,
    isDayPinned: visit.isDayPinned,
    isStartPinned: visit.isStartPinned,
    revision: visit.revision,
    crew: (crews.get(visit.id) ?? []).map(({ crew, name }) => ({
      staffId: crew.staffId,
      name,
      role: crew.role as BoardVisit['crew'][number]['role'],
    })),
    jobs: (jobsOf.get(visit.id) ?? []).map((row) => toJob(row, places.get(visit.siteId), details)),
  }));
}

function isAhead(state: string): boolean {
  return ['pencilled', 'planned', 'travelling'].includes(state);
}

function readUnplaced(db: ReadableDb, today: string): UnplacedJob[] {
  const rows = listJobs(db, { applianceId: null, isWaiting: true });
  const places = placesById(
    db,
    rows.flatMap(({ siteId }) => (siteId === null ? [] : [siteId])),
  );
  const details = readJobDetails(db, rows, {
    today,
    asked: rows.map(({ job }) => ({ jobId: job.id, kind: job.kind, plannedOn: null })),
  });
  const lengths = lengthsOfJobs(
    db,
    rows.map(({ job }) => job.id),
  );
  return rows
    .flatMap(({ siteId, customerId, customerName, street, city, ...row }) => {
      if (siteId === null || customerId === null || customerName === null || street === null || city === null)
        return [];
      const place = places.get(siteId);
      const length = lengths.get(row.job.id);
      return [
        {
          ...toJob(row, place, details),
          siteId,
          customerId,
          customerName,
          street,
          city,
          postcode: place?.postcode ?? null,
          latitude: place?.latitude ?? null,
          longitude: place?.longitude ?? null,
          suggestedMin: expectedMinutes(length === undefined ? [] : [length]),
        },
      ];
    })
    .toSorted(byPressing);
}

type JobRow = Pick<ReturnType<typeof listVisitJobs>[number], 'job' | 'appliance' | 'openMakeSafes'>;
type JobDetails = {
  readonly openNotices: ReadonlyMap<string, readonly OpenNotice[]>;
  readonly openReadiness: ReadonlyMap<string, readonly string[]>;
  readonly agedReadiness: ReadonlyMap<string, readonly AgedAnswer[]>;
  readonly skills: ReadonlyMap<string, readonly string[]>;
  readonly demandsOf: DemandsOf;
};

function readJobDetails(
  db: ReadableDb,
  rows: readonly JobRow[],
  readiness: { readonly today: string; readonly asked: readonly AskedJob[] },
): JobDetails {
  const skills = Map.groupBy(
    listJobSkills(
      db,
      rows.map(({ job }) => job.id),
    ),
    (row) => row.jobId,
  );
  return {
    openNotices: readOpenNotices(
      db,
      rows.map(({ appliance }) => appliance.id),
    ),
    openReadiness: openReadinessOf(db, rows),
    agedReadiness: agedReadinessOf(db, readiness.asked, readiness.today),
    skills: new Map([...skills].map(([jobId, list]) => [jobId, list.map((row) => row.skill)])),
    demandsOf: readWorkDemands(db),
  };
}

function toJob(
  { job, appliance, openMakeSafes }: JobRow,
  place: SitePlaceRow | undefined,
  details: JobDetails,
): BoardJob {
  const kind = job.kind as BoardJob['kind'];
  const fuel = (place?.fuel ?? appliance.plateFuel) as FuelKey | null;
  const demands = details.demandsOf(kind, appliance.sheetId, fuel);
  return {
    jobId: job.id,
    kind,
    applianceId: appliance.id,
    serial: appliance.serial,
    maker: appliance.maker,
    model: appliance.model,
    fuel,
    ratedInputKw: appliance.ratedInputKw,
    region: place?.region ?? null,
    country: place?.country ?? null,
    isDone: job.closedAt !== null,
    ...demands,
    instruments: [...demands.instruments],
    openMakeSafes,
    openNotices: [...(details.openNotices.get(appliance.id) ?? [])],
    openReadiness: [...(details.openReadiness.get(job.id) ?? [])],
    agedReadiness: [...(details.agedReadiness.get(job.id) ?? [])],
    openedAt: job.openedAt,
    priority: job.priority,
    wantedFromOn: job.wantedFromOn,
    wantedToOn: job.wantedToOn,
    latestOn: job.latestOn,
    latestWhy: job.latestWhy,
    expectedMin: job.expectedMin,
    skills: [...(details.skills.get(job.id) ?? [])],
  };
}

function placesById(db: ReadableDb, siteIds: readonly string[]): ReadonlyMap<string, SitePlaceRow> {
  return new Map(listSitePlaces(db, [...new Set(siteIds)]).map((row) => [row.siteId, row]));
}

/** Technicians and helpers who are there on any of the days. */
function isSent(
  { roles, activeFrom, activeTo }: WorkerRow,
  days: { readonly from: string; readonly to: string },
): boolean {
  return (
    roles.some((role) => role === 'technician' || role === 'helper') &&
    activeFrom <= days.to &&
    (activeTo === null || activeTo >= days.from)
  );
}

function toTechnician(row: WorkerRow): BoardTechnician {
  return {
    ...row,
    hours: [...row.hours],
    skills: [...row.skills],
    instruments: row.instruments.map((one) => ({
      ...one,
      kinds: [...one.kinds],
      calibrations: [...one.calibrations],
    })),
    licences: row.licences.map((one) => ({ ...one, place: one.place ?? null })),
    trainings: row.trainings.map(({ maker, modelLine, validFrom, validTo }) => ({
      maker,
      modelLine,
      validFrom,
      validTo,
    })),
    absences: row.absences.map(toAbsence),
  };
}
