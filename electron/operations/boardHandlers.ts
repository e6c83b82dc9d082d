/** The board: reading it, moving and pinning visits on it, and what waiting jobs ask of a plan. */
import type { ReadableDb } from '../../db/openStore.ts';
import { listJobSkills } from '../../db/planning.ts';
import { jobSkills, jobs, visits } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { findJob, findVisit, listCrews, listVisitJobs, type VisitRecord } from '../../db/visits.ts';
import { readBoard } from './boardRows.ts';
import { type Crew, replaceCrew, requireLicensedCrew, requireNotBegun, requireUnchanged } from './bookingHandlers.ts';
import { companyToday } from './companyToday.ts';
import { fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import { expectedMinutesOf } from './workers.ts';

export const boardHandlers: Handlers<
  'board.get' | 'visits.place' | 'visits.pin' | 'visits.promise' | 'jobs.getPlanning' | 'jobs.setPlanning'
> = {
  'board.get': (input, context) => readBoard(context.db, input, companyToday(context)),

  'visits.place': (input, context) => {
    const visit = requireNotBegun(context.db, input.visitId);
    requireUnchanged(context.db, visit, input.baseRevision);
    const crew = movedCrew(context.db, input.visitId, input.moveCrew);
    const jobIds = listVisitJobs(context.db, [input.visitId]).map(({ job }) => job.id);
    requireLicensedCrew(context.db, jobIds, input.plannedOn, crew);
    const { plannedOn, startMin, durationMin } = input;
    return change(context, visit, { plannedOn, startMin, durationMin }, (writer) =>
      replaceCrew(writer, input.visitId, crew),
    );
  },

  'visits.pin': (input, context) => {
    const visit = requireNotBegun(context.db, input.visitId);
    requireUnchanged(context.db, visit, input.baseRevision);
    const { isTechnicianPinned, isDayPinned, isStartPinned } = input;
    return change(context, visit, { isTechnicianPinned, isDayPinned, isStartPinned });
  },

  'visits.promise': (input, context) => {
    const visit = requireNotBegun(context.db, input.visitId);
    requireUnchanged(context.db, visit, input.baseRevision);
    return change(context, visit, { promisedOn: input.isPromised ? visit.plannedOn : null });
  },

  'jobs.getPlanning': (input, context) => {
    const job = findJob(context.db, input.jobId) ?? notFound('jobs', input.jobId);
    return {
      priority: job.priority,
      wantedFromOn: job.wantedFromOn,
      wantedToOn: job.wantedToOn,
      latestOn: job.latestOn,
      latestWhy: job.latestWhy,
      expectedMin: job.expectedMin,
      skills: listJobSkills(context.db, [job.id]).map((row) => row.skill),
      suggestedMin: expectedMinutesOf(context.db, [job.id]),
    };
  },

  'jobs.setPlanning': (input, context) => {
    const { jobId, skills, ...fields } = input;
    if (findJob(context.db, jobId) === undefined) return notFound('jobs', jobId);
    const { wantedFromOn, wantedToOn } = fields;
    if (wantedFromOn !== null && wantedToOn !== null && wantedToOn < wantedFromOn)
      return fail('dates-reversed', { fromOn: wantedFromOn, toOn: wantedToOn });
    context.write((writer) => {
      writer.update(jobs, jobId, fields);
      const current = listJobSkills(writer.db, [jobId]);
      for (const row of current) if (!skills.includes(row.skill)) writer.remove(jobSkills, row.id);
      for (const skill of new Set(skills))
        if (!current.some((row) => row.skill === skill)) writer.insert(jobSkills, { jobId, skill });
    });
    context.services.changed(['jobs']);
    return {};
  },
};

/** Writes the change under the next revision; nothing changed: the revision stays. */
function change(
  context: HandlerContext,
  visit: VisitRecord,
  fields: Partial<VisitRecord>,
  andThen: (writer: StoreWriter) => void = () => undefined,
): { readonly revision: number } {
  context.write((writer) => {
    writer.update(visits, visit.id, { ...fields, revision: visit.revision + 1 });
    andThen(writer);
  });
  context.services.changed(['visits', 'jobs']);
  return { revision: findVisit(context.db, visit.id)?.revision ?? visit.revision };
}

function movedCrew(
  db: ReadableDb,
  visitId: string,
  move: { readonly fromStaffId: string; readonly toStaffId: string } | null,
): Crew {
  const crew = listCrews(db, [visitId]).map((row) => ({
    staffId: row.crew.staffId,
    role: row.crew.role as Crew[number]['role'],
  }));
  if (move === null || move.fromStaffId === move.toStaffId) return crew;
  if (!crew.some((member) => member.staffId === move.fromStaffId))
    return fail('not-on-crew', { staffId: move.fromStaffId });
  return crew
    .filter((member) => member.staffId !== move.toStaffId)
    .map((member) => (member.staffId === move.fromStaffId ? { ...member, staffId: move.toStaffId } : member));
}
