/** Queries over what jobs ask of a plan: skills, and the supplies and places of many sites at once. */
import { eq, inArray } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { gasSupplies, gasSupplySites, jobSkills, sites } from './schema/index.ts';

export function listJobSkills(db: ReadableDb, jobIds: readonly string[]): readonly (typeof jobSkills.$inferSelect)[] {
  if (jobIds.length === 0) return [];
  return db
    .select()
    .from(jobSkills)
    .where(inArray(jobSkills.jobId, [...jobIds]))
    .all();
}

export type SitePlaceRow = {
  readonly siteId: string;
  readonly postcode: string | null;
  readonly region: string | null;
  readonly country: string;
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly access: string | null;
  readonly timeZone: string;
  /** Of its gas supply; null: none on file. */
  readonly fuel: string | null;
};

export function listSitePlaces(db: ReadableDb, siteIds: readonly string[]): readonly SitePlaceRow[] {
  if (siteIds.length === 0) return [];
  return db
    .select({
      siteId: sites.id,
      postcode: sites.postcode,
      region: sites.region,
      country: sites.country,
      latitude: sites.latitude,
      longitude: sites.longitude,
      access: sites.access,
      timeZone: sites.timeZone,
      fuel: gasSupplies.fuel,
    })
    .from(sites)
    .leftJoin(gasSupplySites, eq(gasSupplySites.siteId, sites.id))
    .leftJoin(gasSupplies, eq(gasSupplies.id, gasSupplySites.gasSupplyId))
    .where(inArray(sites.id, [...siteIds]))
    .all();
}
