/**
 * The columns in which somebody writes in their own words and so may have named a person. Codes, keys, answers to choose from,
 * days and numbers are never looked through: a customer called None must not take the answer "none" with them.
 */
import { getTableColumns, getTableName } from 'drizzle-orm';
import type { AnySQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';
import * as schema from '../schema/index.ts';

export type FreeWords = {
  readonly table: string;
  /** The column, and the field by which the change log knows it. */
  readonly columns: readonly { readonly column: string; readonly field: string }[];
};

function freeIn<T extends SQLiteTable>(table: T, ...fields: readonly (keyof T['_']['columns'] & string)[]): FreeWords {
  const columns = getTableColumns(table) as Record<string, AnySQLiteColumn>;
  return {
    table: getTableName(table),
    columns: fields.flatMap((field) => {
      const column = columns[field];
      return column === undefined ? [] : [{ column: column.name, field }];
    }),
  };
}

/** Not here: other people's rows, the firm's own (staff, instruments, templates, notices), sheets, and what a seal holds. */
export const FREE_WORDS: readonly FreeWords[] = [
  freeIn(schema.absences, 'reason'),
  freeIn(schema.applianceDates, 'source'),
  freeIn(schema.appliances, 'note'),
  freeIn(schema.attachments, 'fileName'),
  freeIn(schema.claims, 'note', 'refusedBecause'),
  freeIn(schema.consents, 'source'),
  freeIn(schema.customers, 'note'),
  freeIn(schema.firstYearContacts, 'note'),
  freeIn(schema.fuelStates, 'proof'),
  freeIn(schema.gasLoads, 'name'),
  freeIn(schema.gasSupplySites, 'unit'),
  freeIn(schema.imports, 'fileName'),
  freeIn(schema.issuedDocuments, 'gapReason'),
  freeIn(schema.jobs, 'note', 'chargeReason', 'latestWhy'),
  freeIn(schema.listWorks, 'fileName'),
  freeIn(schema.makeSafes, 'what', 'isolatedHow', 'toldWhom', 'deliveredHow', 'closedReason'),
  freeIn(schema.messageEvents, 'note'),
  freeIn(schema.messages, 'subject', 'body'),
  freeIn(schema.partyRoles, 'note'),
  freeIn(schema.permits, 'endReason'),
  freeIn(schema.photoRequests, 'askedWhom'),
  freeIn(schema.placements, 'unit', 'position', 'endReason'),
  freeIn(schema.readinessAnswers, 'note', 'confirmedBy'),
  freeIn(schema.readings, 'notMeasuredReason'),
  freeIn(schema.recallOutcomes, 'note'),
  freeIn(schema.registrations, 'note', 'takenBackWhy'),
  freeIn(schema.runAnswers, 'reason'),
  freeIn(schema.runTunings, 'interruptedReason'),
  freeIn(schema.signOffs, 'name'),
  freeIn(schema.siteEmitters, 'zone'),
  freeIn(schema.siteTransfers, 'takenBackWhy'),
  freeIn(schema.visits, 'note', 'outcomeReason'),
  freeIn(schema.wastedTrips, 'note'),
];

/** The answers whose value is a line of words and no choice: `id` is a row of `run_answers`. */
export const NOTE_ANSWERS_SQL = `SELECT a.id FROM run_answers a JOIN runs r ON r.id = a.run_id
  JOIN sheet_revisions s ON s.id = r.sheet_revision_id
  WHERE a.value IS NOT NULL AND holds_person(a.value) AND EXISTS (SELECT 1 FROM json_tree(s.body) item
    WHERE item.type = 'object' AND json_extract(item.value, '$.kind') = 'note' AND json_extract(item.value, '$.key') = a.item_key)`;
