/** Queries over jobs, readiness, visits and their crews. */
import type { Database } from 'better-sqlite3';
import { and, asc, between, desc, eq, inArray, isNotNull, isNull, ne, type SQL, sql } from 'drizzle-orm';
import type { AnySQLiteColumn } from 'drizzle-orm/sqlite-core';
import type { ReadableDb } from './openStore.ts';
import { preparedOnce } from './preparedOnce.ts';
import { rawStatement } from './rawStatement.ts';
import {
  appliances,
  customers,
  jobs,
  makeSafes,
  parties,
  placements,
  readinessAnswers,
  runs,
  sites,
  staff,
  visitCrew,
  visitJobs,
  visits,
} from './schema/index.ts';

export type VisitRecord = typeof visits.$inferSelect;
export type JobRecord = typeof jobs.$inferSelect;

/** Jobs with where their appliance stands and the visit that is to do them or did. */
export function listJobs(
  db: ReadableDb,
  filter: {
    readonly applianceId: string | null;
    readonly jobIds?: readonly string[];
    /** Open and without a visit. */
    readonly isWaiting?: boolean;
  },
) {
  // A visit that ended without finishing the work (site not ready, return needed, made safe) leaves the job waiting again.
  const counts = sql`${visits.state} <> 'cancelled' AND (${visits.outcome} IS NULL OR ${visits.outcome} = 'finished')`;
  const hasVisit = sql`EXISTS (SELECT 1 FROM ${visitJobs} JOIN ${visits} ON ${visits.id} = ${visitJobs.visitId} WHERE ${visitJobs.jobId} = ${jobs.id} AND ${counts})`;
  const conditions = [
    // Work on an appliance taken out of use waits for nobody; put back, it is there again.
    filter.isWaiting ? and(isNull(jobs.closedAt), isNotNull(placements.id), sql`NOT ${hasVisit}`) : undefined,
    filter.applianceId === null ? undefined : eq(jobs.applianceId, filter.applianceId),
    filter.jobIds === undefined ? undefined : inArray(jobs.id, [...filter.jobIds]),
  ];
  return db
    .select({
      job: jobs,
      appliance: appliances,
      siteId: sites.id,
      street: sites.street,
      city: sites.city,
      customerId: customers.id,
      customerName: parties.name,
      openMakeSafes: sql<number>`(SELECT count(*) FROM ${makeSafes} WHERE ${makeSafes.applianceId} = ${appliances.id} AND ${makeSafes.closedAt} IS NULL)`,
      visitId: ofLastVisit(visits.id, counts, visits.plannedOn),
      /** The day of that visit. */
      visitOn: ofLastVisit(visits.plannedOn, counts, visits.plannedOn),
      lastOutcome: ofLastVisit(visits.outcome, isNotNull(visits.outcome), visits.endedAt),
    })
    .from(jobs)
    .innerJoin(appliances, eq(appliances.id, jobs.applianceId))
    .leftJoin(placements, and(eq(placements.applianceId, appliances.id), isNull(placements.toOn)))
    .leftJoin(sites, eq(sites.id, placements.siteId))
    .leftJoin(customers, eq(customers.id, sites.customerId))
    .leftJoin(parties, eq(parties.id, customers.partyId))
    .where(and(...conditions))
    .orderBy(desc(jobs.openedAt))
    .all();
}

/** Of the job's visits that count, the one that comes last. */
function ofLastVisit(column: AnySQLiteColumn, counts: SQL, by: AnySQLiteColumn): SQL<string | null> {
  return sql<
    string | null
  >`(SELECT ${column} FROM ${visitJobs} JOIN ${visits} ON ${visits.id} = ${visitJobs.visitId} WHERE ${visitJobs.jobId} = ${jobs.id} AND ${counts} ORDER BY ${by} DESC LIMIT 1)`;
}

export function findJob(db: ReadableDb, jobId: string): JobRecord | undefined {
  return db.select().from(jobs).where(eq(jobs.id, jobId)).get();
}

export function findOpenStartup(db: ReadableDb, applianceId: string): JobRecord | undefined {
  return db
    .select()
    .from(jobs)
    .where(and(eq(jobs.applianceId, applianceId), eq(jobs.kind, 'startup'), isNull(jobs.closedAt)))
    .get();
}

export function listReadiness(db: ReadableDb, jobIds: readonly string[]) {
  if (jobIds.length === 0) return [];
  return db
    .select({ answer: readinessAnswers, recordedByName: staff.name })
    .from(readinessAnswers)
    .innerJoin(staff, eq(staff.id, readinessAnswers.recordedById))
    .where(inArray(readinessAnswers.jobId, [...jobIds]))
    .all();
}

const visitById = preparedOnce((db) =>
  db
    .select()
    .from(visits)
    .where(eq(visits.id, sql.placeholder('id')))
    .prepare(),
);

export function findVisit(db: ReadableDb, visitId: string): VisitRecord | undefined {
  return visitById(db).get({ id: visitId });
}

const jobOfVisit = preparedOnce((db) =>
  db
    .select({ id: visitJobs.id })
    .from(visitJobs)
    .where(and(eq(visitJobs.visitId, sql.placeholder('visitId')), eq(visitJobs.jobId, sql.placeholder('jobId'))))
    .prepare(),
);

export function isJobOfVisit(db: ReadableDb, visitId: string, jobId: string): boolean {
  return jobOfVisit(db).get({ visitId, jobId }) !== undefined;
}

export type VisitFilter = { readonly visitId: string } | { readonly from: string; readonly to: string };

/** Visits with site and customer, in the order of the diary. */
export function listVisits(db: ReadableDb, filter: VisitFilter) {
  return db
    .select({
      visit: visits,
      street: sites.street,
      city: sites.city,
      customerId: customers.id,
      customerName: parties.name,
    })
    .from(visits)
    .innerJoin(sites, eq(sites.id, visits.siteId))
    .innerJoin(customers, eq(customers.id, sites.customerId))
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .where('visitId' in filter ? eq(visits.id, filter.visitId) : between(visits.plannedOn, filter.from, filter.to))
    .orderBy(asc(visits.plannedOn), asc(visits.plannedFrom), asc(visits.id))
    .all();
}

export function listCrews(db: ReadableDb, visitIds: readonly string[]) {
  if (visitIds.length === 0) return [];
  return db
    .select({ crew: visitCrew, name: staff.name })
    .from(visitCrew)
    .innerJoin(staff, eq(staff.id, visitCrew.staffId))
    .where(inArray(visitCrew.visitId, [...visitIds]))
    .orderBy(asc(visitCrew.id))
    .all();
}

export function listVisitJobs(db: ReadableDb, visitIds: readonly string[]) {
  if (visitIds.length === 0) return [];
  return db
    .select({
      visitId: visitJobs.visitId,
      job: jobs,
      appliance: appliances,
      runId: runs.id,
      sealedAt: runs.sealedAt,
      openMakeSafes: sql<number>`(SELECT count(*) FROM ${makeSafes} WHERE ${makeSafes.applianceId} = ${appliances.id} AND ${makeSafes.closedAt} IS NULL)`,
    })
    .from(visitJobs)
    .innerJoin(jobs, eq(jobs.id, visitJobs.jobId))
    .innerJoin(appliances, eq(appliances.id, jobs.applianceId))
    .leftJoin(runs, eq(runs.jobId, jobs.id))
    .where(inArray(visitJobs.visitId, [...visitIds]))
    .orderBy(asc(visitJobs.id))
    .all();
}

/** Which of these jobs have more than one visit ahead: work over several days. */
export function listJobsOverDays(db: ReadableDb, jobIds: readonly string[]): ReadonlySet<string> {
  if (jobIds.length === 0) return new Set();
  const rows = db
    .select({ jobId: visitJobs.jobId })
    .from(visitJobs)
    .innerJoin(visits, eq(visits.id, visitJobs.visitId))
    .where(and(inArray(visitJobs.jobId, [...jobIds]), inArray(visits.state, ['pencilled', 'planned'])))
    .groupBy(visitJobs.jobId)
    .having(sql`count(*) > 1`)
    .all();
  return new Set(rows.map(({ jobId }) => jobId));
}

/** Earlier visits of the same job that are not cancelled: a return trip reopens its run. */
export function listOtherVisitsOfJob(db: ReadableDb, jobId: string, visitId: string): readonly VisitRecord[] {
  return db
    .select({ visit: visits })
    .from(visitJobs)
    .innerJoin(visits, eq(visits.id, visitJobs.visitId))
    .where(and(eq(visitJobs.jobId, jobId), ne(visits.id, visitId), ne(visits.state, 'cancelled')))
    .all()
    .map((row) => row.visit);
}

/** Services of an appliance that ended as finished, oldest first. */
export function listFinishedServices(db: ReadableDb, applianceId: string) {
  return db
    .select({ plannedOn: visits.plannedOn, runId: runs.id, invoiceNumber: jobs.outsideInvoiceNumber, note: jobs.note })
    .from(jobs)
    .innerJoin(visitJobs, eq(visitJobs.jobId, jobs.id))
    .innerJoin(visits, eq(visits.id, visitJobs.visitId))
    .leftJoin(runs, eq(runs.jobId, jobs.id))
    .where(and(eq(jobs.applianceId, applianceId), eq(jobs.kind, 'service'), eq(visits.outcome, 'finished')))
    .orderBy(asc(visits.plannedOn))
    .all();
}

/** Cancelled, the last planned day first. */
export function listCancelledVisitsOfJob(db: ReadableDb, jobId: string): readonly VisitRecord[] {
  return db
    .select({ visit: visits })
    .from(visitJobs)
    .innerJoin(visits, eq(visits.id, visitJobs.visitId))
    .where(and(eq(visitJobs.jobId, jobId), eq(visits.state, 'cancelled')))
    .orderBy(desc(visits.plannedOn), desc(visits.id))
    .all()
    .map((row) => row.visit);
}

/** As the change log has it: the state that stood when the last one was written. null: the log does not tell. */
export function readStateBeforeCancel(raw: Database, visitId: string): string | null {
  const states = rawStatement(
    raw,
    `SELECT fields ->> '$.state.value' AS state FROM op
     WHERE entity = 'visits' AND entity_id = ? AND fields ->> '$.state.value' IS NOT NULL ORDER BY rowid DESC LIMIT 2`,
  )
    .pluck()
    .all(visitId) as string[];
  return states[1] ?? null;
}
