/** The columns in which somebody may have written a person's name: texts about people and work, not the firm's own tables. */
import type { Database } from 'better-sqlite3';
import { is } from 'drizzle-orm';
import { getTableConfig, SQLiteTable } from 'drizzle-orm/sqlite-core';
import { rawStatement } from '../rawStatement.ts';
import * as schema from '../schema/index.ts';

/** Other people's rows, the firm's own, sheets, and what is handled on its own: log, seals, caches. */
const LEFT_OUT = new Set([
  'parties',
  'sites',
  'op',
  'device',
  'seals',
  'seal_disclosures',
  'day_heads',
  'companies',
  'staff',
  'staff_roles',
  'staff_skills',
  'licences',
  'trainings',
  'instruments',
  'calibrations',
  'instrument_mappings',
  'message_templates',
  'recalls',
  'sheet_revisions',
  'sheet_drafts',
  'sheet_draft_edits',
  'travel_tables',
  'appliance_dues',
  'registration_gaps',
  'derived_tables',
]);
const EXPORTED: readonly unknown[] = Object.values(schema);

/** Answers how many rows held the person. */
export function sweepTables(raw: Database): number {
  let count = 0;
  for (const table of EXPORTED) {
    if (!is(table, SQLiteTable)) continue;
    const { name, columns } = getTableConfig(table);
    if (LEFT_OUT.has(name)) continue;
    for (const column of columns) {
      const isText = column.dataType === 'string' || column.dataType === 'json';
      if (!isText || column.enumValues?.length || /(^|_)(id|sha256|hash)$/.test(column.name)) continue;
      count += rawStatement(
        raw,
        `UPDATE "${name}" SET "${column.name}" = without_person("${column.name}") WHERE "${column.name}" IS NOT NULL AND holds_person("${column.name}")`,
      ).run().changes;
    }
  }
  return count;
}
