/** Begins a visit: a run for each of its jobs, with the sheet revision it keeps; a run that is there already is taken up again. */
import { findAppliance, findApplianceSummary, findFuelStateOn } from '../../db/appliances.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findRunOfJob } from '../../db/runs.ts';
import { runs, visitCrew, visitJobs, visits } from '../../db/schema/index.ts';
import { findNewestRevision, listSheetRevisions, type SheetRevisionRow } from '../../db/sheets.ts';
import { findGasSupply, findSite } from '../../db/sites.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { findVisit, listCrews, listOtherVisitsOfJob, listVisitJobs, type VisitRecord } from '../../db/visits.ts';
import type { FuelKey, ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { fail, notFound } from './handler.ts';
import { requireLicenceBeforeFiring } from './licensing.ts';
import { ensureRegistration } from './registrationRows.ts';
import { dayIn } from './today.ts';
import { visitDay } from './visitDay.ts';

export type BegunRun = { readonly jobId: string; readonly runId: string };

export function beginVisit(writer: StoreWriter, visit: VisitRecord, byId: string): BegunRun[] {
  const on = visitDay(writer.db, { ...visit, startedAt: visit.startedAt ?? writer.now });
  const begun = listVisitJobs(writer.db, [visit.id]).map(({ job, appliance, runId }) => {
    const fuel = fuelOf(writer.db, appliance.id, on);
    requireLicenceBeforeFiring(writer.db, byId, { on, fuel, ratedInputKw: appliance.ratedInputKw });
    if (runId !== null) {
      const run = findRunOfJob(writer.db, job.id);
      // A return trip takes the run up again: what lapses is asked once more.
      if (run !== undefined && run.sealedAt === null && visit.startedAt === null)
        writer.update(runs, run.id, { reopenedAt: writer.now });
      return { jobId: job.id, runId };
    }
    const revision = revisionFor(writer.db, appliance, fuel);
    if (job.kind === 'startup') ensureRegistration(writer, appliance.id, job.id);
    return {
      jobId: job.id,
      runId: writer.insert(runs, { jobId: job.id, sheetRevisionId: revision.id, fuel, startedAt: writer.now }),
    };
  });
  if (visit.startedAt === null) writer.update(visits, visit.id, { state: 'started', startedAt: writer.now });
  return begun;
}

/** The visit that takes up what an ended one left: the one booked for it, else a new one today with the same crew. */
export function returnTripOf(writer: StoreWriter, ended: VisitRecord, byId: string): VisitRecord {
  const left = listVisitJobs(writer.db, [ended.id]).filter(
    ({ job, sealedAt }) => job.closedAt === null && sealedAt === null,
  );
  if (left.length === 0) return fail('no-return-needed', {});
  const booked = left
    .flatMap(({ job }) => listOtherVisitsOfJob(writer.db, job.id, ended.id))
    .find((visit) => visit.outcome === null);
  if (booked !== undefined) return booked;
  const visitId = writer.insert(visits, {
    siteId: ended.siteId,
    state: 'planned',
    plannedOn: dayIn(findSite(writer.db, ended.siteId)?.timeZone ?? 'UTC', writer.now),
    durationMin: ended.durationMin,
  });
  for (const { job } of left) writer.insert(visitJobs, { visitId, jobId: job.id });
  const crew = listCrews(writer.db, [ended.id]).map(({ crew: { staffId, role } }) => ({ staffId, role }));
  const isKnown = crew.some(({ staffId }) => staffId === byId);
  for (const member of isKnown ? crew : [...crew, { staffId: byId, role: 'licensed' }])
    writer.insert(visitCrew, { visitId, ...member });
  return findVisit(writer.db, visitId) ?? notFound('visits', visitId);
}

/** The fuel of the site's gas supply, else of the appliance as converted by that day, else of its plate. */
function fuelOf(db: ReadableDb, applianceId: string, on: string): FuelKey {
  const siteId = findApplianceSummary(db, applianceId)?.siteId ?? null;
  const fuel =
    (siteId === null ? undefined : findGasSupply(db, siteId)?.fuel) ??
    findFuelStateOn(db, applianceId, on)?.fuel ??
    findAppliance(db, applianceId)?.plateFuel;
  return fuel === undefined || fuel === null ? fail('fuel-unknown', { applianceId }) : (fuel as FuelKey);
}

/** The maker's sheet in its newest revision; without one, general practice for the fuel. */
function revisionFor(
  db: ReadableDb,
  appliance: { readonly id: string; readonly sheetId: string | null },
  fuel: FuelKey,
): SheetRevisionRow {
  const own = appliance.sheetId === null ? undefined : findNewestRevision(db, appliance.sheetId);
  const general = listSheetRevisions(db).find(
    (row) => row.maker === null && (row.body as ModelSheet).fuels.some((one) => one.fuel === fuel),
  );
  return own ?? general ?? fail('no-sheet', { applianceId: appliance.id, fuel });
}
