/** Every table as it stands, for giving out: without caches, what is this machine's own, the change log, and PINs. */
import { asc, eq, getTableColumns, is, isNull, sql } from 'drizzle-orm';
import { getTableConfig, SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { ReadableDb } from './openStore.ts';
import * as schema from './schema/index.ts';
import { applianceDates, appliances, customers, parties, placements, sites } from './schema/index.ts';

export type ExportTable = {
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly Readonly<Record<string, unknown>>[];
};

const LEFT_OUT = new Set(['device', 'op', 'appliance_dues', 'registration_gaps', 'derived_tables']);
const SECRET_COLUMNS = new Set(['pin_hash', 'salt']);
const EXPORTED: readonly unknown[] = Object.values(schema);

/** By the names the columns have in SQL. */
export function listExportRows(db: ReadableDb): readonly ExportTable[] {
  return EXPORTED.filter((one): one is SQLiteTable => is(one, SQLiteTable))
    .filter((table) => !LEFT_OUT.has(getTableConfig(table).name))
    .map((table) => {
      const columns = Object.entries(getTableColumns(table)).filter(([, column]) => !SECRET_COLUMNS.has(column.name));
      const rows = db.select().from(table).all() as Record<string, unknown>[];
      return {
        name: getTableConfig(table).name,
        columns: columns.map(([, column]) => column.name),
        rows: rows.map((row) => Object.fromEntries(columns.map(([key, column]) => [column.name, row[key]]))),
      };
    })
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}

/** One line per appliance, or per site and customer without one; the headings are those an import knows. */
export function listPlainRows(db: ReadableDb): Omit<ExportTable, 'name'> {
  const dateOf = (kind: string) =>
    sql<string | null>`(SELECT CASE ${applianceDates.precision} WHEN 'year' THEN substr(${applianceDates.on}, 1, 4)
      WHEN 'month' THEN substr(${applianceDates.on}, 1, 7) ELSE ${applianceDates.on} END
      FROM ${applianceDates} WHERE ${applianceDates.applianceId} = ${appliances.id} AND ${applianceDates.kind} = ${kind})`;
  const rows = db
    .select({
      'Customer number': customers.id,
      Name: parties.name,
      'Person or firm': parties.kind,
      Contact: parties.contactName,
      Language: parties.language,
      'E-mail': parties.email,
      Phone: parties.phoneTyped,
      Street: parties.street,
      Postcode: parties.postcode,
      City: parties.city,
      'State or province': parties.region,
      Country: parties.country,
      'Name of the site': sites.label,
      'Street of the site': sites.street,
      'Postcode of the site': sites.postcode,
      'City of the site': sites.city,
      'State of the site': sites.region,
      'Country of the site': sites.country,
      'Kind of building': sites.buildingKind,
      Access: sites.access,
      Altitude: sites.altitudeM,
      Maker: appliances.maker,
      Model: appliances.model,
      'Serial number': appliances.serial,
      'Fuel on the plate': appliances.plateFuel,
      'Rated input': appliances.ratedInputKw,
      Made: dateOf('made'),
      Sold: dateOf('sold'),
      Installed: dateOf('installed'),
      'Started up': dateOf('started'),
      'Where it stands': placements.position,
    })
    .from(customers)
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .leftJoin(sites, eq(sites.customerId, customers.id))
    .leftJoin(placements, sql`${placements.siteId} = ${sites.id} AND ${isNull(placements.toOn)}`)
    .leftJoin(appliances, eq(appliances.id, placements.applianceId))
    .where(isNull(parties.erasedAt))
    .orderBy(asc(parties.name), asc(customers.id), asc(sites.id), asc(appliances.serial))
    .all();
  return { columns: Object.keys(rows[0] ?? { Name: '' }), rows };
}
