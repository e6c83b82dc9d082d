/** Where appliances stand and stood: one row for each place, the open one is where it is now. */
import { and, asc, desc, eq, isNull, ne, sql } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { appliances, jobs, placements, sites, visitJobs, visits } from './schema/index.ts';

export type PlacementRow = typeof placements.$inferSelect;

export function findPlacement(db: ReadableDb, applianceId: string): PlacementRow | undefined {
  return db
    .select()
    .from(placements)
    .where(and(eq(placements.applianceId, applianceId), isNull(placements.toOn)))
    .get();
}

/** Where it stands, else where it stood last. */
export function findLastPlacement(db: ReadableDb, applianceId: string): PlacementRow | undefined {
  return db
    .select()
    .from(placements)
    .where(eq(placements.applianceId, applianceId))
    .orderBy(sql`${placements.toOn} IS NOT NULL`, desc(placements.toOn), desc(placements.id))
    .get();
}

/** The newest first, each with its address. */
export function listPlacements(db: ReadableDb, applianceId: string) {
  return db
    .select({ placement: placements, street: sites.street, city: sites.city })
    .from(placements)
    .innerJoin(sites, eq(sites.id, placements.siteId))
    .where(eq(placements.applianceId, applianceId))
    .orderBy(sql`${placements.toOn} IS NOT NULL`, desc(placements.toOn), desc(placements.id))
    .all();
}

/** It stood somewhere and stands nowhere now. */
export function isTakenOut(db: ReadableDb, applianceId: string): boolean {
  return findLastPlacement(db, applianceId)?.toOn != null;
}

/** The site of a job's work: where its trip goes or went, else where the appliance stands or stood. */
export function findSiteIdOfJob(
  db: ReadableDb,
  job: { readonly id: string; readonly applianceId: string },
): string | undefined {
  const trip = db
    .select({ siteId: visits.siteId })
    .from(visitJobs)
    .innerJoin(visits, eq(visits.id, visitJobs.visitId))
    .where(and(eq(visitJobs.jobId, job.id), ne(visits.state, 'cancelled')))
    .orderBy(desc(visits.plannedOn), desc(visits.id))
    .get();
  return trip?.siteId ?? findLastPlacement(db, job.applianceId)?.siteId;
}

/** What came in the place of this one. */
export function findSuccessor(db: ReadableDb, applianceId: string): typeof appliances.$inferSelect | undefined {
  return db.select().from(appliances).where(eq(appliances.supersedesId, applianceId)).get();
}

/** Days of visits to it that are booked or under way. */
export function listDaysAhead(db: ReadableDb, applianceId: string): readonly string[] {
  return db
    .selectDistinct({ day: visits.plannedOn })
    .from(jobs)
    .innerJoin(visitJobs, eq(visitJobs.jobId, jobs.id))
    .innerJoin(visits, eq(visits.id, visitJobs.visitId))
    .where(
      and(
        eq(jobs.applianceId, applianceId),
        isNull(jobs.closedAt),
        ne(visits.state, 'cancelled'),
        isNull(visits.endedAt),
      ),
    )
    .orderBy(asc(visits.plannedOn))
    .all()
    .map((row) => row.day);
}
