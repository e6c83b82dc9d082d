/** Queries over what happened to one appliance: documents, parts, claims, owners, messages, recalls. */
import { and, asc, desc, eq, inArray, isNotNull, isNull, or } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import {
  appliances,
  attachmentLinks,
  claims,
  fittedParts,
  issuedDocuments,
  jobs,
  messages,
  parties,
  partyRoles,
  readings,
  recallOutcomes,
  recalls,
  runs,
} from './schema/index.ts';

export type ClaimRecord = typeof claims.$inferSelect;

export function listClaims(
  db: ReadableDb,
  filter: { readonly applianceId: string | null; readonly openOnly: boolean },
) {
  return db
    .select({ claim: claims, serial: appliances.serial, maker: appliances.maker, model: appliances.model })
    .from(claims)
    .innerJoin(appliances, eq(appliances.id, claims.applianceId))
    .where(
      and(
        filter.applianceId === null ? undefined : eq(claims.applianceId, filter.applianceId),
        filter.openOnly ? eq(claims.outcome, 'open') : undefined,
      ),
    )
    .orderBy(desc(claims.openedOn), desc(claims.id))
    .limit(500)
    .all();
}

export function findClaim(db: ReadableDb, claimId: string): ClaimRecord | undefined {
  return db.select().from(claims).where(eq(claims.id, claimId)).get();
}

export function listFittedParts(db: ReadableDb, applianceId: string): readonly (typeof fittedParts.$inferSelect)[] {
  return db
    .select()
    .from(fittedParts)
    .where(and(eq(fittedParts.applianceId, applianceId), isNull(fittedParts.removedAt)))
    .all();
}

export function listDocumentsOfAppliance(db: ReadableDb, applianceId: string) {
  return db
    .select({ document: issuedDocuments })
    .from(issuedDocuments)
    .innerJoin(runs, eq(runs.id, issuedDocuments.runId))
    .innerJoin(jobs, eq(jobs.id, runs.jobId))
    .where(and(eq(jobs.applianceId, applianceId), eq(issuedDocuments.kind, 'packet-pdf')))
    .all()
    .map(({ document }) => document);
}

/** Sealed runs, the oldest first. */
export function listSealedRunIds(db: ReadableDb, applianceId: string): readonly string[] {
  return db
    .select({ runId: runs.id })
    .from(runs)
    .innerJoin(jobs, eq(jobs.id, runs.jobId))
    .where(and(eq(jobs.applianceId, applianceId), isNotNull(runs.sealedAt)))
    .orderBy(asc(runs.startedAt))
    .all()
    .map(({ runId }) => runId);
}

export function listCurrentReadings(db: ReadableDb, runIds: readonly string[]) {
  if (runIds.length === 0) return [];
  return db
    .select()
    .from(readings)
    .where(and(inArray(readings.runId, [...runIds]), isNull(readings.supersededById)))
    .orderBy(asc(readings.measuredAt), asc(readings.id))
    .all();
}

export function listPhotosOfRuns(db: ReadableDb, runIds: readonly string[]) {
  if (runIds.length === 0) return [];
  return db
    .select()
    .from(attachmentLinks)
    .where(
      and(
        eq(attachmentLinks.entity, 'runs'),
        inArray(attachmentLinks.entityId, [...runIds]),
        isNull(attachmentLinks.removedAt),
      ),
    )
    .orderBy(asc(attachmentLinks.id))
    .all();
}

export function listOwners(db: ReadableDb, applianceId: string, siteId: string | null) {
  const where =
    siteId === null
      ? eq(partyRoles.applianceId, applianceId)
      : or(eq(partyRoles.applianceId, applianceId), eq(partyRoles.siteId, siteId));
  return db
    .select({ role: partyRoles, party: parties })
    .from(partyRoles)
    .innerJoin(parties, eq(parties.id, partyRoles.partyId))
    .where(and(eq(partyRoles.role, 'owner'), where))
    .all();
}

export function listMessagesAbout(db: ReadableDb, applianceId: string): readonly (typeof messages.$inferSelect)[] {
  return db.select().from(messages).where(eq(messages.applianceId, applianceId)).all();
}

export function listRecallOutcomesOf(db: ReadableDb, applianceId: string) {
  return db
    .select({ outcome: recallOutcomes, title: recalls.title })
    .from(recallOutcomes)
    .innerJoin(recalls, eq(recalls.id, recallOutcomes.recallId))
    .where(eq(recallOutcomes.applianceId, applianceId))
    .all();
}

export function listOpenRolesAtSite(db: ReadableDb, siteId: string): readonly (typeof partyRoles.$inferSelect)[] {
  return db
    .select()
    .from(partyRoles)
    .where(and(eq(partyRoles.siteId, siteId), isNull(partyRoles.toOn)))
    .all();
}
