/** Taking in what a company already has, and giving everything out again. */
import { z } from 'zod';
import { IMPORT_FIELD_KEYS, type ImportFieldKey } from '../../domain/imports/importFields.ts';
import type { ImportIssueCode } from '../../domain/imports/importRow.ts';
import { BUILDING_KINDS } from '../../domain/vocabulary/places.ts';
import { LIST_WORK_KINDS } from '../../domain/vocabulary/work.ts';
import { id, instant, nothing, operation } from './operation.ts';

export const importFieldKey = z.enum(IMPORT_FIELD_KEYS as [ImportFieldKey, ...ImportFieldKey[]]);

export const importMapping = z.strictObject({
  /** By column; null: left out. Each field at most once. */
  columns: z.array(importFieldKey.nullable()).min(1).max(200),
  dayOrder: z.enum(['day-first', 'month-first']).nullable(),
  powerUnit: z.enum(['kW', 'Btu/h']),
  lengthUnit: z.enum(['m', 'ft']),
  country: z.string().trim().length(2),
  buildingKind: z.enum(BUILDING_KINDS),
  customerKind: z.enum(['person', 'firm']),
  siteAtCustomer: z.boolean(),
});
export type ImportMapping = z.output<typeof importMapping>;

/** Something a person said about one row; nothing is merged without it. */
export const importDecision = z.strictObject({
  row: z.number().int().min(2),
  /** This row's customer is one on file, … */
  customerId: id.nullable().default(null),
  /** … or the one of an earlier row. */
  sameAsRow: z.number().int().min(2).nullable().default(null),
  /** This row's appliance is on file: only its past service is taken. */
  applianceId: id.nullable().default(null),
});
export type ImportDecision = z.input<typeof importDecision>;

const source = {
  attachmentId: id,
  /** Of a workbook; null: the first one with anything in it. */
  sheetName: z.string().max(100).nullable().default(null),
};

const issueCode = z.custom<ImportIssueCode>((value) => typeof value === 'string');

export const importProblem = z.strictObject({
  why: z.enum([
    'too-large',
    'too-many-rows',
    'too-many-columns',
    'not-text',
    'not-a-table',
    'not-a-workbook',
    'quotes-broken',
    'no-rows',
    'sheet-missing',
  ]),
  row: z.number().int().nullable(),
});

export const importCounts = z.strictObject({
  customers: z.number().int(),
  sites: z.number().int(),
  appliances: z.number().int(),
  services: z.number().int(),
});

export const listWorkKind = z.enum(LIST_WORK_KINDS);
export type ListWorkKind = z.output<typeof listWorkKind>;

/** `rows`: those of the list; what is searched and what falls due follow at the end. */
const listProgress = z.discriminatedUnion('isDone', [
  z.strictObject({
    isDone: z.literal(false),
    /** null: it has hardly begun. */
    step: z
      .strictObject({
        doing: z.enum(['looking', 'rows', 'finds', 'dues']),
        done: z.number().int(),
        of: z.number().int(),
      })
      .nullable(),
  }),
  /** What was taken in, or out. */
  z.strictObject({ isDone: z.literal(true), importId: id, counts: importCounts }),
]);

const begun = z.strictObject({ workId: id });
const isUnderWay = { 'list-work-going': nothing } as const;

export const importSuggestion = z.strictObject({
  row: z.number().int(),
  name: z.string(),
  others: z.array(
    z.strictObject({
      customerId: id.nullable(),
      row: z.number().int().nullable(),
      name: z.string(),
      where: z.string().nullable(),
      because: z.array(z.enum(['same-name', 'same-phone', 'same-address', 'same-email'])),
    }),
  ),
});
export type ImportSuggestion = z.output<typeof importSuggestion>;

export const importCheck = z.strictObject({
  fileName: z.string(),
  encoding: z.enum(['UTF-8', 'UTF-16', 'Windows-1252', 'workbook']),
  delimiter: z.string().nullable(),
  sheets: z.array(z.string()),
  sheetName: z.string().nullable(),
  headings: z.array(z.string()),
  rowCount: z.number().int(),
  /** The first rows as they are, to choose the columns by. */
  sample: z.array(z.array(z.string())),
  mapping: importMapping,
  counts: importCounts,
  /** The first of them, by row. */
  issues: z.array(
    z.strictObject({
      row: z.number().int(),
      column: z.number().int().nullable(),
      code: issueCode,
      detail: z.string().nullable(),
    }),
  ),
  issueCount: z.number().int(),
  ambiguousDays: z.number().int(),
  suggestions: z.array(importSuggestion),
  suggestionCount: z.number().int(),
  importedBefore: z.strictObject({ importedAt: instant }).nullable(),
});
export type ImportCheck = z.output<typeof importCheck>;

const exportedZip = z.strictObject({ attachmentId: id, fileName: z.string(), byteLength: z.number().int() });

const exportProgress = z.discriminatedUnion('isDone', [
  z.strictObject({
    isDone: z.literal(false),
    /** Name of the table. */
    writing: z.string(),
    tablesDone: z.number().int(),
    tableCount: z.number().int(),
    rowsDone: z.number().int(),
    rowCount: z.number().int(),
    /** Photos and documents. */
    filesDone: z.number().int(),
    fileCount: z.number().int(),
  }),
  exportedZip.extend({
    isDone: z.literal(true),
    files: z.array(z.strictObject({ name: z.string(), rowCount: z.number().int() })),
    /** Photos and documents, as many ZIPs as they fill. */
    fileZips: z.array(exportedZip),
    fileCount: z.number().int(),
    /** On file, but their bytes are gone or spoiled. */
    missingCount: z.number().int(),
  }),
]);

export const importOperations = {
  /** Reads the whole file and says what would happen. Writes nothing. */
  'imports.check': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({
      ...source,
      mapping: importMapping.nullable().default(null),
      decisions: z.array(importDecision).max(20_000).default([]),
    }),
    output: importCheck,
    errors: { 'table-not-read': importProblem, 'field-twice': z.strictObject({ field: z.string() }) },
  }),
  /** Begins to take all of it in, in one transaction that is kept at the end or not at all. It goes on by itself. */
  'imports.start': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({
      ...source,
      mapping: importMapping,
      decisions: z.array(importDecision).max(20_000).default([]),
      /** The same file was taken in before and is meant to be once more. */
      isKnownAgain: z.boolean().default(false),
    }),
    output: begun,
    errors: {
      ...isUnderWay,
      'table-not-read': importProblem,
      'field-twice': z.strictObject({ field: z.string() }),
      'import-has-errors': z.strictObject({ issueCount: z.number().int() }),
      'imported-before': z.strictObject({ importedAt: instant }),
    },
  }),
  /** Begins to take everything an import wrote out again; it ends without a change where later work hangs on it. */
  'imports.startUndo': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ importId: id }),
    output: begun,
    errors: { ...isUnderWay, 'already-undone': nothing },
  }),
  /** How far it is, after a moment or at its end. */
  'imports.follow': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ workId: id }),
    output: listProgress,
    errors: {
      'list-work-stopped': nothing,
      'later-work': z.strictObject({
        /** Tables of what hangs on it, with how many. */
        hangsOn: z.array(z.strictObject({ what: z.string(), count: z.number().int() })),
      }),
    },
  }),
  /** Nothing of it stays. `isStopped` false: it was through already. */
  'imports.stop': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ workId: id }),
    output: z.strictObject({ isStopped: z.boolean() }),
  }),
  /** What is under way, and what was cut off when the program ended in the middle: nothing of that was written. */
  'imports.listWorks': operation({
    access: ['owner', 'dispatcher'],
    input: nothing,
    output: z.array(
      z.strictObject({
        workId: id,
        kind: listWorkKind,
        fileName: z.string(),
        begunAt: instant,
        begunByName: z.string(),
        isGoing: z.boolean(),
      }),
    ),
  }),
  /** Somebody has read that it was cut off. */
  'imports.forgetCutOff': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ workId: id }),
    output: nothing,
    errors: isUnderWay,
  }),
  'imports.list': operation({
    access: ['owner', 'dispatcher'],
    input: nothing,
    output: z.array(
      z.strictObject({
        importId: id,
        fileName: z.string(),
        counts: importCounts,
        importedAt: instant,
        importedByName: z.string(),
        undoneAt: instant.nullable(),
        undoneByName: z.string().nullable(),
      }),
    ),
  }),
  /** Lists brought in the last weeks and not taken in, the newest of each name: some are being put right meanwhile. */
  'imports.listWaiting': operation({
    access: ['owner', 'dispatcher'],
    input: nothing,
    output: z.array(
      z.strictObject({ attachmentId: id, fileName: z.string(), addedAt: instant, addedByName: z.string() }),
    ),
  }),
  /** Begins to write every subject as CSV and all of it as JSON, as it stands now. */
  'exports.start': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({
      /** Photos and documents too: much larger, and longer. */
      withFiles: z.boolean().default(false),
      /** Every change ever made, without PINs. */
      withLog: z.boolean().default(false),
    }),
    output: z.strictObject({ exportId: id }),
  }),
  /** Writes for a moment and answers how far it is; asked again until the one ZIP is made, which is kept as a file. */
  'exports.goOn': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ exportId: id }),
    output: exportProgress,
    errors: { 'export-stopped': nothing },
  }),
  /** Nothing of it stays. */
  'exports.stop': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ exportId: id }),
    output: nothing,
  }),
} as const;
