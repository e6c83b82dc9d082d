/**
 * Every table as it stood at one moment, for giving out row by row while work goes on: without caches, what is this
 * machine's own, and PINs; the change log and the list of files only where they are asked for.
 */
import Database from 'better-sqlite3';
import { asc, eq, getTableColumns, isNull, sql } from 'drizzle-orm';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { getTableConfig } from 'drizzle-orm/sqlite-core';
import type { ReadableDb } from './openStore.ts';
import * as schema from './schema/index.ts';
import { applianceDates, appliances, customers, parties, placements, sites } from './schema/index.ts';
import { SCHEMA_TABLES } from './schemaTables.ts';

/** `json` is kept as the text of a JSON value, `flag` as 0 or 1. */
export type ExportColumn = { readonly name: string; readonly kind: 'plain' | 'json' | 'flag' };
export type ExportRow = readonly (string | number | null)[];

export type ExportTable = {
  readonly name: string;
  readonly columns: readonly ExportColumn[];
  readonly rowCount: number;
  /** In the order of the columns. One table is read at a time. */
  readonly rows: () => Iterable<ExportRow>;
};

/** Kept once however often it is on file. */
export type ExportedFile = { readonly sha256: string; readonly mediaType: string };

export type ExportChoice = { readonly withFiles: boolean; readonly withLog: boolean };

export type ExportSnapshot = {
  readonly tables: readonly ExportTable[];
  /** One row per appliance, or per site and customer without one; the names of the columns are those an import knows. */
  readonly plain: Omit<ExportTable, 'name'>;
  /** null: not asked for. `belongings`: one row for each thing a file belongs to, or one for a file of nothing. */
  readonly files: { readonly list: readonly ExportedFile[]; readonly belongings: Omit<ExportTable, 'name'> } | null;
  readonly close: () => void;
};

const LOG = 'op';
const LEFT_OUT = new Set(['device', 'appliance_dues', 'registration_gaps', 'derived_tables', 'list_works']);
const SECRET_COLUMNS = new Set(['pin_hash', 'salt']);

/** A connection of its own in one reading transaction: what is written meanwhile is not seen. Must be closed, also in the middle of a table. */
export function openExportSnapshot(storePath: string, choice: ExportChoice): ExportSnapshot {
  const raw = new Database(storePath, { readonly: true });
  try {
    raw.exec('BEGIN');
    let reading: IterableIterator<unknown> | null = null;
    const read: Reader = (text, params = []) => {
      reading = raw
        .prepare(text)
        .raw()
        .iterate(...params);
      return reading as Iterable<ExportRow>;
    };
    return {
      tables: listTables(raw, read, choice.withLog),
      plain: plainTable(raw, read),
      files: choice.withFiles ? { list: listFiles(raw), belongings: belongingsTable(raw, read) } : null,
      close: () => {
        // A connection with rows still coming cannot be closed.
        reading?.return?.();
        raw.close();
      },
    };
  } catch (error) {
    raw.close();
    throw error;
  }
}

type Reader = (text: string, params?: readonly unknown[]) => Iterable<ExportRow>;

function listTables(raw: Database.Database, read: Reader, withLog: boolean): readonly ExportTable[] {
  return SCHEMA_TABLES.filter((table) => !LEFT_OUT.has(getTableConfig(table).name))
    .filter((table) => withLog || getTableConfig(table).name !== LOG)
    .map((table) => {
      const { name } = getTableConfig(table);
      const columns = Object.values(getTableColumns(table))
        .filter((column) => !SECRET_COLUMNS.has(column.name))
        .map((column) => ({ name: column.name, kind: KIND_OF[column.dataType] ?? ('plain' as const) }));
      const listed = columns
        .map((column) => (name === LOG ? loggedColumn(column.name) : `"${column.name}"`))
        .join(', ');
      return {
        name,
        columns,
        rowCount: raw.prepare(`SELECT count(*) FROM "${name}"`).pluck().get() as number,
        rows: () => read(`SELECT ${listed} FROM "${name}"`),
      };
    })
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}

/** The log holds what was ever in a field: what no table gives out, it does not give out either. */
function loggedColumn(name: string): string {
  return name === 'fields' ? `json_remove("fields", '$.pinHash', '$.salt') AS "fields"` : `"${name}"`;
}

const KIND_OF: Readonly<Record<string, 'json' | 'flag'>> = { json: 'json', boolean: 'flag' };

function plainTable(raw: Database.Database, read: Reader): ExportSnapshot['plain'] {
  const query = plainQuery(drizzle({ client: raw, schema }));
  const { sql: text, params } = query.toSQL();
  return {
    columns: Object.keys(query._.selectedFields).map((name) => ({ name, kind: 'plain' })),
    rowCount: raw
      .prepare(`SELECT count(*) FROM (${text})`)
      .pluck()
      .get(...params) as number,
    rows: () => read(text, params),
  };
}

function plainQuery(db: ReadableDb) {
  const dateOf = (kind: string) =>
    sql<string | null>`(SELECT CASE ${applianceDates.precision} WHEN 'year' THEN substr(${applianceDates.on}, 1, 4)
      WHEN 'month' THEN substr(${applianceDates.on}, 1, 7) ELSE ${applianceDates.on} END
      FROM ${applianceDates} WHERE ${applianceDates.applianceId} = ${appliances.id} AND ${applianceDates.kind} = ${kind})`;
  return db
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
    .orderBy(asc(parties.name), asc(customers.id), asc(sites.id), asc(appliances.serial));
}

/** Exports made earlier hold all of this already. */
const GIVEN_FILES = "a.erased_at IS NULL AND a.subject <> 'export'";

function listFiles(raw: Database.Database): readonly ExportedFile[] {
  return raw
    .prepare(
      `SELECT a.sha256, min(a.media_type) AS mediaType FROM attachments a WHERE ${GIVEN_FILES} GROUP BY a.sha256 ORDER BY min(a.added_at), a.sha256`,
    )
    .all() as ExportedFile[];
}

function belongingsTable(raw: Database.Database, read: Reader): Omit<ExportTable, 'name'> {
  const owners = [
    'SELECT attachment_id, entity, entity_id, item_key AS part FROM attachment_links WHERE removed_at IS NULL',
    ...listFileColumns().map(
      ({ table, column }) =>
        `SELECT "${column}" AS attachment_id, '${table}' AS entity, id AS entity_id, '${column}' AS part FROM "${table}" WHERE "${column}" IS NOT NULL`,
    ),
  ];
  const text = `SELECT a.sha256, a.id, a.file_name, a.media_type, a.byte_length, a.subject, a.taken_at, a.added_at, o.entity, o.entity_id, o.part
    FROM attachments a LEFT JOIN (${owners.join(' UNION ALL ')}) o ON o.attachment_id = a.id
    WHERE ${GIVEN_FILES} ORDER BY a.added_at, a.id, o.entity, o.entity_id`;
  return {
    columns: raw
      .prepare(text)
      .columns()
      .map(({ name }) => ({ name: name === 'id' ? 'attachment_id' : name, kind: 'plain' })),
    rowCount: raw.prepare(`SELECT count(*) FROM (${text})`).pluck().get() as number,
    rows: () => read(text),
  };
}

/** Every column that holds the id of an attachment. */
function listFileColumns(): readonly { readonly table: string; readonly column: string }[] {
  return SCHEMA_TABLES.flatMap((table) => {
    const { name, columns, foreignKeys } = getTableConfig(table);
    const pointing = new Set(
      foreignKeys
        .map((key) => key.reference())
        .filter(({ foreignTable }) => getTableConfig(foreignTable).name === 'attachments')
        .flatMap((reference) => reference.columns.map((column) => column.name)),
    );
    return columns
      .filter((column) => pointing.has(column.name) || /(^|_)attachment_id$/u.test(column.name))
      .filter(() => name !== 'attachment_links')
      .map((column) => ({ table: name, column: column.name }));
  });
}
