/** Queries over sites with their emitters and gas supply. */
import { and, asc, eq, isNotNull, isNull, ne, or, sql } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import {
  customers,
  gasLoads,
  gasSupplies,
  gasSupplySites,
  makeSafes,
  parties,
  placements,
  siteEmitters,
  sites,
} from './schema/index.ts';

export type SiteRow = typeof sites.$inferSelect;
export type GasSupplyRow = typeof gasSupplies.$inferSelect;

export function findSite(db: ReadableDb, siteId: string): SiteRow | undefined {
  return db.select().from(sites).where(eq(sites.id, siteId)).get();
}

export function listSitesOf(db: ReadableDb, customerId: string): readonly SiteSummaryRow[] {
  return siteSummaries(db).where(eq(sites.customerId, customerId)).orderBy(asc(sites.street)).all();
}

export function listSiteAddresses(
  db: ReadableDb,
): readonly { readonly street: string; readonly postcode: string | null; readonly city: string }[] {
  return db.select({ street: sites.street, postcode: sites.postcode, city: sites.city }).from(sites).all();
}

export type SiteSummaryRow = {
  readonly siteId: string;
  readonly customerId: string;
  readonly customerName: string;
  readonly label: string | null;
  readonly street: string;
  readonly postcode: string | null;
  readonly city: string;
  readonly applianceCount: number;
  readonly openMakeSafes: number;
};

function siteSummaries(db: ReadableDb) {
  return db
    .select({
      siteId: sites.id,
      customerId: sites.customerId,
      customerName: parties.name,
      label: sites.label,
      street: sites.street,
      postcode: sites.postcode,
      city: sites.city,
      applianceCount: sql<number>`(SELECT count(*) FROM ${placements} WHERE ${placements.siteId} = ${sites.id} AND ${placements.toOn} IS NULL)`,
      openMakeSafes: sql<number>`(SELECT count(*) FROM ${makeSafes} WHERE ${makeSafes.siteId} = ${sites.id} AND ${makeSafes.closedAt} IS NULL)`,
    })
    .from(sites)
    .innerJoin(customers, eq(customers.id, sites.customerId))
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .$dynamic();
}

export function listEmitters(db: ReadableDb, siteId: string): readonly (typeof siteEmitters.$inferSelect)[] {
  return db
    .select()
    .from(siteEmitters)
    .where(and(eq(siteEmitters.siteId, siteId), isNull(siteEmitters.removedAt)))
    .orderBy(asc(siteEmitters.id))
    .all();
}

export function findGasSupply(db: ReadableDb, siteId: string): GasSupplyRow | undefined {
  return db
    .select({ supply: gasSupplies })
    .from(gasSupplySites)
    .innerJoin(gasSupplies, eq(gasSupplies.id, gasSupplySites.gasSupplyId))
    .where(eq(gasSupplySites.siteId, siteId))
    .get()?.supply;
}

/** A boiler taken out of use draws nothing; put back, its load is there again. */
const ON_THE_PIPE = sql`(gas_loads.appliance_id IS NULL OR EXISTS (SELECT 1 FROM placements pl WHERE pl.appliance_id = gas_loads.appliance_id AND pl.to_on IS NULL))`;

export function listGasLoads(db: ReadableDb, gasSupplyId: string): readonly (typeof gasLoads.$inferSelect)[] {
  return db
    .select()
    .from(gasLoads)
    .where(and(eq(gasLoads.gasSupplyId, gasSupplyId), ON_THE_PIPE))
    .orderBy(asc(gasLoads.id))
    .all();
}

export function listNeighbourAltitudesM(db: ReadableDb, site: SiteRow): readonly number[] {
  const near =
    site.postcode === null
      ? eq(sites.city, site.city)
      : or(eq(sites.postcode, site.postcode), eq(sites.city, site.city));
  return db
    .select({ altitudeM: sites.altitudeM })
    .from(sites)
    .where(and(ne(sites.id, site.id), eq(sites.country, site.country), isNotNull(sites.altitudeM), near))
    .limit(50)
    .all()
    .flatMap((row) => (row.altitudeM === null ? [] : [row.altitudeM]));
}
