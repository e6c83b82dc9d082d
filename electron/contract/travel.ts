/** The firm's own travel times: a file of ways and minutes that comes before what is reckoned from the map. */
import { z } from 'zod';
import { TRAVEL_COLUMNS } from '../../domain/schedule/readTravelRows.ts';
import { importProblem } from './imports.ts';
import { id, instant, nothing, operation } from './operation.ts';

const row = z.number().int();

/** `row` as a spreadsheet counts it. */
const travelLine = z.discriminatedUnion('code', [
  z.strictObject({ row, code: z.literal('name-missing'), column: z.enum(['from', 'to']) }),
  z.strictObject({ row, code: z.literal('not-whole-minutes'), typed: z.string() }),
  z.strictObject({ row, code: z.literal('said-otherwise'), earlierRow: row }),
]);

const travelTable = z.strictObject({
  fileName: z.string(),
  loadedAt: instant,
  loadedByName: z.string(),
  pairCount: z.number().int(),
  /** Names in it that are no address, postcode, town or person on file: the first of them, and how many. */
  unknownNames: z.array(z.string()),
  unknownCount: z.number().int(),
});
export type TravelTableFacts = z.output<typeof travelTable>;

export const travelOperations = {
  /** null: ways are reckoned from the map alone. */
  'travel.getTable': operation({
    access: ['owner', 'dispatcher'],
    input: nothing,
    output: z.strictObject({ table: travelTable.nullable() }),
  }),
  /** All of the file or nothing; what was loaded before is replaced. */
  'travel.loadTable': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ attachmentId: id }),
    output: z.strictObject({ pairCount: z.number().int() }),
    errors: {
      'table-not-read': importProblem,
      'travel-columns-missing': z.strictObject({ missing: z.array(z.enum(TRAVEL_COLUMNS)) }),
      'travel-lines-wrong': z.strictObject({ lines: z.array(travelLine), count: z.number().int() }),
    },
  }),
  /** Back to the map; the file is kept. */
  'travel.dropTable': operation({ access: ['owner', 'dispatcher'], input: nothing, output: nothing }),
} as const;
