import { join } from 'node:path';
import Database from 'better-sqlite3';
import { getTableConfig } from 'drizzle-orm/sqlite-core';
import { describe, expect, it } from 'vitest';
import { migrate, readMigrations } from '../../../db/migrate.ts';
import { FREE_WORDS } from '../../../db/persons/freeWords.ts';
import { PERSON_QUERIES } from '../../../db/persons/personRows.ts';
import { SCHEMA_TABLES } from '../../../db/schemaTables.ts';
import { APP_ROOT } from '../../support/testCore.ts';

/** What is erased or left in another way, or is nobody's: see `erasePerson`. */
const NOT_LOOKED_THROUGH = new Set([
  ...['parties', 'sites', 'seals', 'seal_disclosures', 'op', 'device', 'day_heads'],
  ...['companies', 'staff', 'staff_roles', 'staff_skills', 'licences', 'trainings', 'instruments', 'calibrations'],
  ...['instrument_mappings', 'message_templates', 'recalls', 'sheet_revisions', 'sheet_drafts', 'sheet_draft_edits'],
  ...['travel_tables', 'appliance_dues', 'registration_gaps', 'derived_tables'],
]);

/** Codes, keys, numbers and texts that name things. An answer (`run_answers.value`) is words only where its item is a note. */
const STRUCTURE = new Set(
  `kind state role by outcome origin entity purpose channel language country skill point quantity comparator precision
  item_key step_key stage_key part_key firing_point current_step_key answer view code serial serial_key maker model
  plate_fuel tag_fuel rated_input_basis vent_kind fuel conversion_kit orifice number compensation regulator
  value heating_value_typed heating_value_source media_type exif_at subject emitter part_number part_name name claim_number
  currency parts_outcome labour_outcome issuer typed_text typed_unit outdoor_typed_text outdoor_typed_unit
  label_number outside_invoice_number since plant_group planned_from planned_to incarnation mapping counts roles why`
    .split(/\s+/u)
    .filter((name) => name !== ''),
);

/** The firm's own lists and absences, and files, which are given out as they are. */
const NOT_GIVEN_OUT = new Set(['absences', 'attachments', 'imports', 'issued_documents', 'list_works']);

const NOW = '2026-03-02T13:00:00.000Z';

describe('the columns in which a person may be named', () => {
  const free = new Set(FREE_WORDS.flatMap(({ table, columns }) => columns.map(({ column }) => `${table}.${column}`)));
  const texts = SCHEMA_TABLES.flatMap((table) => {
    const { name, columns } = getTableConfig(table);
    if (NOT_LOOKED_THROUGH.has(name)) return [];
    return columns
      .filter(({ dataType }) => dataType === 'string' || dataType === 'json')
      .filter(
        (column) => !/(^|_)(id|sha256|hash|on|at|from|to|by|due)$/u.test(column.name) || column.name === 'confirmed_by',
      )
      .map((column) => ({ table: name, column: column.name }));
  });

  it('are named once, and are there', () => {
    const known = new Set(texts.map(({ table, column }) => `${table}.${column}`));
    expect([...free].filter((one) => !known.has(one))).toEqual([]);
    expect(FREE_WORDS.flatMap(({ columns }) => columns)).toHaveLength(free.size);
  });

  it('are given out to the person they are about', () => {
    const raw = new Database(':memory:');
    raw.exec('CREATE TABLE _migration (name TEXT PRIMARY KEY, sha TEXT NOT NULL, at TEXT NOT NULL) STRICT');
    migrate(raw, readMigrations(join(APP_ROOT, 'db/migrations')), NOW);
    const given = new Set(
      Object.values(PERSON_QUERIES).flatMap((query) =>
        raw
          .prepare(query)
          .columns()
          .map(({ table, column }) => `${table}.${column}`),
      ),
    );
    raw.close();
    expect([...free].filter((one) => !given.has(one) && !NOT_GIVEN_OUT.has(one.split('.')[0] ?? ''))).toEqual([]);
  });

  it('are all: a column that comes is either of these or a code', () => {
    const undecided = texts.filter(({ table, column }) => !free.has(`${table}.${column}`) && !STRUCTURE.has(column));
    expect(undecided).toEqual([]);
  });
});
