/** Queries over registrations and the documents issued for them. */
import { and, asc, desc, eq, isNull, lte, ne } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import {
  appliances,
  customers,
  issuedDocuments,
  parties,
  permits,
  placements,
  registrations,
  runs,
  sites,
  visitJobs,
  visits,
} from './schema/index.ts';

export type RegistrationRecord = typeof registrations.$inferSelect;

export function findRegistration(db: ReadableDb, applianceId: string): RegistrationRecord | undefined {
  return db.select().from(registrations).where(eq(registrations.applianceId, applianceId)).get();
}

/** Registrations with their appliance, where it stands, and the run they rest on. */
export function listRegistrations(
  db: ReadableDb,
  filter: { readonly openOnly: boolean; readonly applianceId?: string; readonly followUpBy?: string | null },
) {
  return db
    .select({
      registration: registrations,
      appliance: appliances,
      customerName: parties.name,
      street: sites.street,
      city: sites.city,
      timeZone: sites.timeZone,
      runId: runs.id,
      sealedAt: runs.sealedAt,
    })
    .from(registrations)
    .innerJoin(appliances, eq(appliances.id, registrations.applianceId))
    .leftJoin(placements, and(eq(placements.applianceId, appliances.id), isNull(placements.toOn)))
    .leftJoin(sites, eq(sites.id, placements.siteId))
    .leftJoin(customers, eq(customers.id, sites.customerId))
    .leftJoin(parties, eq(parties.id, customers.partyId))
    .leftJoin(runs, eq(runs.jobId, registrations.jobId))
    .where(
      and(
        filter.openOnly ? ne(registrations.state, 'confirmed') : undefined,
        filter.applianceId === undefined ? undefined : eq(registrations.applianceId, filter.applianceId),
        filter.followUpBy == null ? undefined : lte(registrations.followUpOn, filter.followUpBy),
      ),
    )
    .all();
}

/** The visit a job's run was last worked on in. */
export function findLastVisitOfJob(db: ReadableDb, jobId: string): typeof visits.$inferSelect | undefined {
  return db
    .select({ visit: visits })
    .from(visitJobs)
    .innerJoin(visits, eq(visits.id, visitJobs.visitId))
    .where(and(eq(visitJobs.jobId, jobId), ne(visits.state, 'cancelled')))
    .orderBy(desc(visits.plannedOn), desc(visits.id))
    .get()?.visit;
}

export function listIssuedDocuments(db: ReadableDb, runId: string): readonly (typeof issuedDocuments.$inferSelect)[] {
  return db
    .select()
    .from(issuedDocuments)
    .where(eq(issuedDocuments.runId, runId))
    .orderBy(desc(issuedDocuments.issuedAt))
    .all();
}

export function listPermits(db: ReadableDb, siteId: string): readonly (typeof permits.$inferSelect)[] {
  return db.select().from(permits).where(eq(permits.siteId, siteId)).orderBy(asc(permits.number)).all();
}
