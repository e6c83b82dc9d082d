/** Queries over photos asked for and wasted trips. */
import { and, asc, between, eq, inArray, isNull } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { attachmentLinks, parties, partyRoles, photoRequests, staff, visits, wastedTrips } from './schema/index.ts';

export function listPhotoRequests(db: ReadableDb, jobId: string) {
  return db
    .select({ request: photoRequests, askedByName: staff.name })
    .from(photoRequests)
    .innerJoin(staff, eq(staff.id, photoRequests.askedById))
    .where(eq(photoRequests.jobId, jobId))
    .orderBy(asc(photoRequests.askedAt))
    .all();
}

export function listRequestAttachments(
  db: ReadableDb,
  requestIds: readonly string[],
): readonly (typeof attachmentLinks.$inferSelect)[] {
  if (requestIds.length === 0) return [];
  return db
    .select()
    .from(attachmentLinks)
    .where(
      and(
        eq(attachmentLinks.entity, 'photo_requests'),
        inArray(attachmentLinks.entityId, [...requestIds]),
        isNull(attachmentLinks.removedAt),
      ),
    )
    .orderBy(asc(attachmentLinks.id))
    .all();
}

export function findWastedTrip(db: ReadableDb, visitId: string) {
  return db
    .select({ trip: wastedTrips, recordedByName: staff.name })
    .from(wastedTrips)
    .innerJoin(staff, eq(staff.id, wastedTrips.recordedById))
    .where(eq(wastedTrips.visitId, visitId))
    .get();
}

export function listWastedTrips(db: ReadableDb, days: { readonly from: string; readonly to: string }) {
  return db
    .select({ trip: wastedTrips, on: visits.plannedOn, siteId: visits.siteId })
    .from(wastedTrips)
    .innerJoin(visits, eq(visits.id, wastedTrips.visitId))
    .where(between(visits.plannedOn, days.from, days.to))
    .all();
}

/** Who had that part at these sites, with its dates. */
export function listPartiesInRole(db: ReadableDb, role: string, siteIds: readonly string[]) {
  if (siteIds.length === 0) return [];
  return db
    .select({
      siteId: partyRoles.siteId,
      partyId: parties.id,
      name: parties.name,
      fromOn: partyRoles.fromOn,
      toOn: partyRoles.toOn,
    })
    .from(partyRoles)
    .innerJoin(parties, eq(parties.id, partyRoles.partyId))
    .where(and(eq(partyRoles.role, role), inArray(partyRoles.siteId, [...siteIds])))
    .all();
}
