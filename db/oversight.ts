/** Runs by the day they were begun, with the visit and place of each: what oversight reads. */
import { and, desc, eq, gte, lt } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { appliances, customers, jobs, parties, runs, sites, visitJobs, visits } from './schema/index.ts';

/** Newest first; both instants, the later one left out. */
export function listRunsBegun(db: ReadableDb, from: string, before: string) {
  return db
    .select({
      run: runs,
      job: jobs,
      visitId: visits.id,
      endedAt: visits.endedAt,
      serial: appliances.serial,
      customerName: parties.name,
      street: sites.street,
    })
    .from(runs)
    .innerJoin(jobs, eq(jobs.id, runs.jobId))
    .innerJoin(appliances, eq(appliances.id, jobs.applianceId))
    .innerJoin(visitJobs, eq(visitJobs.jobId, jobs.id))
    .innerJoin(visits, eq(visits.id, visitJobs.visitId))
    .innerJoin(sites, eq(sites.id, visits.siteId))
    .innerJoin(customers, eq(customers.id, sites.customerId))
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .where(and(gte(runs.startedAt, from), lt(runs.startedAt, before)))
    .orderBy(desc(runs.startedAt), desc(visits.plannedOn))
    .all();
}
