/** Queries over appliances: where they stand, their dates, fuel states, visits and open make-safes. */
import { and, asc, desc, eq, gt, inArray, isNull, or, type SQL, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { listLinkedFiles } from './attachments.ts';
import { APPLIANCE_FINDS } from './finds/applianceFinds.ts';
import { inOrderOf } from './finds/inOrderOf.ts';
import { findIds } from './finds/searchCache.ts';
import type { ReadableDb, Store } from './openStore.ts';
import {
  applianceDates,
  appliances,
  customers,
  fuelStates,
  jobs,
  makeSafes,
  parties,
  placements,
  runs,
  sites,
  staff,
  visitJobs,
  visits,
} from './schema/index.ts';

export type ApplianceRow = typeof appliances.$inferSelect;
export type ApplianceDateRow = typeof applianceDates.$inferSelect;

export function findAppliance(db: ReadableDb, applianceId: string): ApplianceRow | undefined {
  return db.select().from(appliances).where(eq(appliances.id, applianceId)).get();
}

export type ApplianceSummaryRow = {
  readonly applianceId: string;
  readonly serial: string;
  readonly maker: string;
  readonly model: string;
  readonly siteId: string | null;
  readonly street: string | null;
  readonly city: string | null;
  readonly customerId: string | null;
  readonly customerName: string | null;
  readonly sheetId: string | null;
  readonly openMakeSafes: number;
  readonly startedOn: string | null;
};

function applianceSummaries(db: ReadableDb) {
  return db
    .select({
      applianceId: appliances.id,
      serial: appliances.serial,
      maker: appliances.maker,
      model: appliances.model,
      siteId: sites.id,
      street: sites.street,
      city: sites.city,
      customerId: customers.id,
      customerName: parties.name,
      sheetId: appliances.sheetId,
      openMakeSafes: sql<number>`(SELECT count(*) FROM ${makeSafes} WHERE ${makeSafes.applianceId} = ${appliances.id} AND ${makeSafes.closedAt} IS NULL)`,
      startedOn: sql<
        string | null
      >`(SELECT ${applianceDates.on} FROM ${applianceDates} WHERE ${applianceDates.applianceId} = ${appliances.id} AND ${applianceDates.kind} = 'started')`,
    })
    .from(appliances)
    .leftJoin(placements, and(eq(placements.applianceId, appliances.id), isNull(placements.toOn)))
    .leftJoin(sites, eq(sites.id, placements.siteId))
    .leftJoin(customers, eq(customers.id, sites.customerId))
    .leftJoin(parties, eq(parties.id, customers.partyId))
    .$dynamic();
}

/** A page by serial; with a query, by when they were filed. The serial may be typed sloppily. */
export function listAppliances(
  { db, raw }: Pick<Store, 'db' | 'raw'>,
  options: { readonly query: string; readonly limit: number; readonly after: string | null },
): readonly ApplianceSummaryRow[] {
  const found = findIds(raw, APPLIANCE_FINDS, options);
  if (found !== null) return summariesOf(db, found);
  const conditions: SQL[] = [];
  if (options.after !== null) {
    const last = findAppliance(db, options.after);
    const next =
      last &&
      or(gt(appliances.serial, last.serial), and(eq(appliances.serial, last.serial), gt(appliances.id, last.id)));
    if (next !== undefined) conditions.push(next);
  }
  return applianceSummaries(db)
    .where(and(...conditions))
    .orderBy(asc(appliances.serial), asc(appliances.id))
    .limit(options.limit)
    .all();
}

function summariesOf(db: ReadableDb, ids: readonly string[]): readonly ApplianceSummaryRow[] {
  const rows = applianceSummaries(db)
    .where(inArray(appliances.id, [...ids]))
    .all();
  return inOrderOf(ids, rows, ({ applianceId }) => applianceId);
}

export function listAppliancesOfSite(db: ReadableDb, siteId: string): readonly ApplianceSummaryRow[] {
  return applianceSummaries(db).where(eq(sites.id, siteId)).orderBy(asc(appliances.serial)).all();
}

export function listAppliancesOfCustomer(db: ReadableDb, customerId: string): readonly ApplianceSummaryRow[] {
  return applianceSummaries(db).where(eq(customers.id, customerId)).orderBy(asc(appliances.serial)).all();
}

export function findApplianceSummary(db: ReadableDb, applianceId: string): ApplianceSummaryRow | undefined {
  return applianceSummaries(db).where(eq(appliances.id, applianceId)).get();
}

/** Whatever the maker: serials that are the same once look-alike characters are. */
export function listBySerialKey(db: ReadableDb, serialKey: string): readonly ApplianceSummaryRow[] {
  return applianceSummaries(db).where(eq(appliances.serialKey, serialKey)).all();
}

export function listApplianceDates(db: ReadableDb, applianceId: string): readonly ApplianceDateRow[] {
  return db
    .select()
    .from(applianceDates)
    .where(eq(applianceDates.applianceId, applianceId))
    .orderBy(asc(applianceDates.on))
    .all();
}

export type FuelStateRow = typeof fuelStates.$inferSelect;

/** The newest first; of two of the same day the one recorded later. */
export function listFuelStates(db: ReadableDb, applianceId: string): readonly FuelStateRow[] {
  return db
    .select()
    .from(fuelStates)
    .where(eq(fuelStates.applianceId, applianceId))
    .orderBy(desc(fuelStates.fromOn), sql`rowid DESC`)
    .all();
}

/** How the appliance was set up on a day: a conversion of a later day says nothing about it. */
export function findFuelStateOn(db: ReadableDb, applianceId: string, on: string): FuelStateRow | undefined {
  return listFuelStates(db, applianceId).find((state) => state.fromOn <= on);
}

/** Photos of a conversion, as attachments. */
export function listFuelStatePhotos(db: ReadableDb, fuelStateId: string): readonly string[] {
  return listLinkedFiles(db, 'fuel_states', fuelStateId);
}

export function listVisitsOfAppliance(db: ReadableDb, applianceId: string) {
  return db
    .select({
      visitId: visits.id,
      runId: runs.id,
      kind: jobs.kind,
      plannedOn: visits.plannedOn,
      state: visits.state,
      outcome: visits.outcome,
      sealedAt: runs.sealedAt,
    })
    .from(jobs)
    .innerJoin(visitJobs, eq(visitJobs.jobId, jobs.id))
    .innerJoin(visits, eq(visits.id, visitJobs.visitId))
    .leftJoin(runs, eq(runs.jobId, jobs.id))
    .where(eq(jobs.applianceId, applianceId))
    .orderBy(desc(visits.plannedOn), desc(visits.id))
    .all();
}

const closer = alias(staff, 'closer');

/** Every make-safe that nobody has closed yet, the oldest first. */
export function listOpenMakeSafes(db: ReadableDb) {
  return db
    .select({
      makeSafe: makeSafes,
      openedByName: staff.name,
      serial: appliances.serial,
      maker: appliances.maker,
      model: appliances.model,
      street: sites.street,
      city: sites.city,
      customerName: parties.name,
    })
    .from(makeSafes)
    .innerJoin(staff, eq(staff.id, makeSafes.openedById))
    .innerJoin(appliances, eq(appliances.id, makeSafes.applianceId))
    .innerJoin(sites, eq(sites.id, makeSafes.siteId))
    .innerJoin(customers, eq(customers.id, sites.customerId))
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .where(isNull(makeSafes.closedAt))
    .orderBy(asc(makeSafes.openedAt), asc(makeSafes.id))
    .all();
}

export function listMakeSafes(db: ReadableDb, applianceId: string) {
  return db
    .select({ makeSafe: makeSafes, openedByName: staff.name, closedByName: closer.name })
    .from(makeSafes)
    .innerJoin(staff, eq(staff.id, makeSafes.openedById))
    .leftJoin(closer, eq(closer.id, makeSafes.closedById))
    .where(eq(makeSafes.applianceId, applianceId))
    .orderBy(sql`${makeSafes.closedAt} IS NOT NULL`, desc(makeSafes.openedAt))
    .all();
}

/** Photos of a make-safe, as attachments, in the order they were taken in. */
export function listMakeSafePhotos(db: ReadableDb, makeSafeId: string): readonly string[] {
  return listLinkedFiles(db, 'make_safes', makeSafeId);
}

export function findMakeSafe(db: ReadableDb, makeSafeId: string): typeof makeSafes.$inferSelect | undefined {
  return db.select().from(makeSafes).where(eq(makeSafes.id, makeSafeId)).get();
}
