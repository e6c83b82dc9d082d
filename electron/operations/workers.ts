/** People and jobs as the scheduling rules of the domain see them. */
import type { ReadableDb } from '../../db/openStore.ts';
import { type InstrumentRow, listInstruments, listLicences, listTrainings } from '../../db/people.ts';
import { listJobSkills, listSitePlaces } from '../../db/planning.ts';
import { findGasSupply } from '../../db/sites.ts';
import { listJobs, listReadiness } from '../../db/visits.ts';
import { type AbsenceRecord, listAbsences } from '../../db/workforce.ts';
import type { FuelKey } from '../../domain/procedure/modelSheet.ts';
import type { RecordedInstrument } from '../../domain/procedure/runRecord.ts';
import { expectedMinutes, type JobForLength } from '../../domain/schedule/expectedMinutes.ts';
import type { HeldLicence } from '../../domain/schedule/gasLicence.ts';
import { type HeldInstrument, kindsOfInstrument } from '../../domain/schedule/heldInstruments.ts';
import type { Work, Worker } from '../../domain/schedule/obstacles.ts';
import type { InstrumentKind } from '../../domain/vocabulary/people.ts';
import type { WorkforceMember } from '../contract/workforce.ts';
import { readWorkDemands } from './workDemandsOf.ts';
import { readWorkforce } from './workforceHandlers.ts';

export type WorkerRow = Omit<Worker, 'absences'> &
  Omit<WorkforceMember, keyof Worker> & { readonly absences: readonly AbsenceRecord[] };

/** Everybody with what they may do, and when they are away in those days. */
export function readWorkers(
  db: ReadableDb,
  days: { readonly from: string; readonly to: string },
): readonly WorkerRow[] {
  const licences = Map.groupBy(listLicences(db), (row) => row.staffId);
  const trainings = Map.groupBy(listTrainings(db), (row) => row.staffId);
  const absences = listAbsences(db, days);
  const instruments = listInstruments(db).filter((row) => row.retiredOn === null);
  return readWorkforce(db).map((person) => ({
    ...person,
    licences: (licences.get(person.staffId) ?? []).map(
      ({ fuel, maxKw, validFrom, validTo, place }): HeldLicence => ({
        fuel: fuel as FuelKey | null,
        maxKw,
        validFrom,
        validTo,
        place,
      }),
    ),
    trainings: trainings.get(person.staffId) ?? [],
    absences: absences.filter((row) => row.staffId === null || row.staffId === person.staffId),
    // One that nobody keeps is for whoever goes.
    instruments: instruments
      .filter((row) => row.keptBy === null || row.keptBy === person.staffId)
      .map(toHeldInstrument),
  }));
}

function toHeldInstrument(row: InstrumentRow): HeldInstrument {
  return {
    instrumentId: row.id,
    label: row.label,
    kinds: kindsOfInstrument({
      kind: row.kind as InstrumentKind,
      accuracy: row.accuracy as RecordedInstrument['accuracy'],
      rangeMax: row.rangeMax,
    }),
    isShared: row.keptBy === null,
    calibrations: row.calibrations.map(({ calibratedOn, dueOn }) => ({ calibratedOn, dueOn })),
  };
}

export function worksOfJobs(db: ReadableDb, jobIds: readonly string[]): readonly Work[] {
  const skills = Map.groupBy(listJobSkills(db, jobIds), (row) => row.jobId);
  const rows = listJobs(db, { applianceId: null, jobIds });
  const siteIds = [...new Set(rows.flatMap(({ siteId }) => (siteId === null ? [] : [siteId])))];
  const places = new Map(listSitePlaces(db, siteIds).map((row) => [row.siteId, row]));
  const demandsOf = readWorkDemands(db);
  return rows.map(({ job, appliance, siteId }) => {
    const kind = job.kind as Work['kind'];
    const supply = siteId === null ? undefined : findGasSupply(db, siteId)?.fuel;
    const fuel = (supply ?? appliance.plateFuel) as FuelKey | null;
    return {
      ...demandsOf(kind, appliance.sheetId, fuel),
      kind,
      fuel,
      ratedInputKw: appliance.ratedInputKw,
      region: siteId === null ? null : (places.get(siteId)?.region ?? null),
      country: siteId === null ? null : (places.get(siteId)?.country ?? null),
      maker: appliance.maker,
      model: appliance.model,
      skills: (skills.get(job.id) ?? []).map((row) => row.skill),
    };
  });
}

export function expectedMinutesOf(db: ReadableDb, jobIds: readonly string[]): number {
  return expectedMinutes([...lengthsOfJobs(db, jobIds).values()]);
}

/** What the length of each job is reckoned from, by job. */
export function lengthsOfJobs(db: ReadableDb, jobIds: readonly string[]): ReadonlyMap<string, JobForLength> {
  const filled = new Map(
    listReadiness(db, jobIds)
      .filter(({ answer }) => answer.itemKey === 'water')
      .map(({ answer }) => [answer.jobId, answer.answer]),
  );
  return new Map(
    listJobs(db, { applianceId: null, jobIds }).map(({ job, appliance }) => [
      job.id,
      {
        kind: job.kind as JobForLength['kind'],
        ratedInputKw: appliance.ratedInputKw,
        isSystemFilled: toYesNo(filled.get(job.id)),
        expectedMin: job.expectedMin,
      },
    ]),
  );
}

function toYesNo(answer: string | undefined): boolean | null {
  return answer === 'yes' ? true : answer === 'no' ? false : null;
}
