/** Visits that were cancelled: the way back to what was planned, as long as their jobs still wait. */
import { visits } from '../../db/schema/index.ts';
import { findVisit, listCancelledVisitsOfJob, listCrews, listJobs, readStateBeforeCancel } from '../../db/visits.ts';
import { oneSiteOf, openReadinessOf, requireLicensedCrew } from './bookingHandlers.ts';
import { fail, type Handlers, notFound } from './handler.ts';
import { readVisitRows } from './visitRows.ts';

export const cancelledVisitHandlers: Handlers<'visits.listCancelled' | 'visits.bringBack'> = {
  'visits.listCancelled': (input, context) =>
    listCancelledVisitsOfJob(context.db, input.jobId).map((visit) => ({
      visitId: visit.id,
      plannedOn: visit.plannedOn,
      startMin: visit.startMin,
      reason: visit.outcomeReason,
      crew: listCrews(context.db, [visit.id]).map(({ name }) => name),
    })),

  'visits.bringBack': (input, context) => {
    const visit = findVisit(context.db, input.visitId) ?? notFound('visits', input.visitId);
    if (visit.state !== 'cancelled') return fail('visit-not-cancelled', {});
    const [row] = readVisitRows(context.db, { visitId: visit.id });
    const jobIds = (row?.jobs ?? []).map(({ jobId }) => jobId);
    const rows = listJobs(context.db, { applianceId: null, jobIds });
    const elsewhere = rows.find((one) => one.visitId !== null);
    if (elsewhere?.visitId != null) return fail('job-booked-elsewhere', { visitId: elsewhere.visitId });
    if (rows.some(({ job }) => job.closedAt !== null)) return fail('job-closed', {});
    if (oneSiteOf(context.db, jobIds) !== visit.siteId) return fail('not-standing', {});
    const crew = (row?.crew ?? []).map(({ staffId, role }) => ({ staffId, role }));
    requireLicensedCrew(context.db, jobIds, visit.plannedOn, crew);
    const isReady = [...openReadinessOf(context.db, rows).values()].every((keys) => keys.length === 0);
    const isPencilled = !isReady || readStateBeforeCancel(context.store.raw, visit.id) === 'pencilled';
    const revision = visit.revision + 1;
    context.write((writer) =>
      writer.update(visits, visit.id, {
        state: isPencilled ? 'pencilled' : 'planned',
        outcomeReason: null,
        revision,
      }),
    );
    context.services.changed(['visits', 'jobs']);
    return { isPencilled, revision };
  },
};
