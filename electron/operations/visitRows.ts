/** Visits as lists and boards show them. */
import { readOpenNotices } from '../../db/openNotices.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { listCrews, listVisitJobs, listVisits, type VisitFilter } from '../../db/visits.ts';
import type { VisitRow } from '../contract/visits.ts';

export function readVisitRows(db: ReadableDb, filter: VisitFilter): VisitRow[] {
  const rows = listVisits(db, filter);
  const ids = rows.map((row) => row.visit.id);
  const crews = Map.groupBy(listCrews(db, ids), (row) => row.crew.visitId);
  const jobs = Map.groupBy(listVisitJobs(db, ids), (row) => row.visitId);
  const notices = readOpenNotices(
    db,
    [...jobs.values()].flat().map(({ appliance }) => appliance.id),
  );
  return rows.map(({ visit, ...where }) => ({
    visitId: visit.id,
    siteId: visit.siteId,
    ...where,
    state: visit.state as VisitRow['state'],
    outcome: visit.outcome as VisitRow['outcome'],
    plannedOn: visit.plannedOn,
    plannedFrom: visit.plannedFrom,
    plannedTo: visit.plannedTo,
    durationMin: visit.durationMin,
    startMin: visit.startMin,
    promisedOn: visit.promisedOn,
    isTechnicianPinned: visit.isTechnicianPinned,
    isDayPinned: visit.isDayPinned,
    isStartPinned: visit.isStartPinned,
    revision: visit.revision,
    crew: (crews.get(visit.id) ?? []).map(({ crew, name }) => ({
      staffId: crew.staffId,
      name,
      role: crew.role as VisitRow['crew'][number]['role'],
    })),
    jobs: (jobs.get(visit.id) ?? []).map(({ job, appliance, runId, sealedAt, openMakeSafes }) => ({
      jobId: job.id,
      kind: job.kind as VisitRow['jobs'][number]['kind'],
      applianceId: appliance.id,
      serial: appliance.serial,
      model: appliance.model,
      runId,
      isSealed: sealedAt !== null,
      openMakeSafes,
      openNotices: [...(notices.get(appliance.id) ?? [])],
    })),
  }));
}
