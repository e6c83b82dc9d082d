/** Queries over registrations and the documents issued for them. */
import type { Database } from 'better-sqlite3';
import { and, asc, desc, eq, inArray, isNotNull, isNull, ne } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
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

/** What is not with the maker yet first, each by its last day; without a known day after the others, but not left out. */
export function listRegistrationPage(
  raw: Database,
  page: {
    readonly openOnly: boolean;
    readonly followUpBy: string | null;
    readonly limit: number;
    readonly after: string | null;
  },
): { readonly applianceIds: readonly string[]; readonly next: string | null } {
  const [rank, dueOn, applianceId] = page.after === null ? [] : page.after.split(' ');
  const rows = rawStatement(raw, PAGE).all({
    openOnly: page.openOnly ? 1 : 0,
    followUpBy: page.followUpBy,
    limit: page.limit,
    rank: Number(rank ?? -1),
    dueOn: dueOn ?? '',
    applianceId: applianceId ?? '',
  }) as { readonly rank: number; readonly dueOn: string; readonly applianceId: string }[];
  const last = rows.length === page.limit ? rows.at(-1) : undefined;
  return {
    applianceIds: rows.map((row) => row.applianceId),
    next: last === undefined ? null : `${last.rank} ${last.dueOn} ${last.applianceId}`,
  };
}

const PAGE = `
  SELECT r.state <> 'recording' AS rank, coalesce(d.due_on, '9999-12-31') AS dueOn, r.appliance_id AS applianceId
  FROM registrations r
  LEFT JOIN appliance_dues d ON d.appliance_id = r.appliance_id AND d.kind = 'registration'
  WHERE (@openOnly = 0 OR r.state <> 'confirmed')
    AND (@followUpBy IS NULL OR r.follow_up_on <= @followUpBy)
    AND (r.state <> 'recording', coalesce(d.due_on, '9999-12-31'), r.appliance_id) > (@rank, @dueOn, @applianceId)
  ORDER BY 1, 2, 3 LIMIT @limit`;

/** Registrations with their appliance, where it stands, and the run they rest on. */
export function listRegistrations(db: ReadableDb, applianceIds: readonly string[]) {
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
    .where(inArray(registrations.applianceId, [...applianceIds]))
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

export type PermitRow = typeof permits.$inferSelect;

/** Those that count. */
export function listPermits(db: ReadableDb, siteId: string): readonly PermitRow[] {
  return db
    .select()
    .from(permits)
    .where(and(eq(permits.siteId, siteId), isNull(permits.withdrawnAt)))
    .orderBy(asc(permits.number))
    .all();
}

export function listWithdrawnPermits(db: ReadableDb, siteId: string): readonly PermitRow[] {
  return db
    .select()
    .from(permits)
    .where(and(eq(permits.siteId, siteId), isNotNull(permits.withdrawnAt)))
    .orderBy(asc(permits.number))
    .all();
}

export function findPermit(db: ReadableDb, permitId: string): PermitRow | undefined {
  return db.select().from(permits).where(eq(permits.id, permitId)).get();
}
