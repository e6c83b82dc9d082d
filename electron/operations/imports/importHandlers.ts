/** Taking a list in: looking at it, writing it in one transaction, and taking it out again as a whole. */
import {
  findImport,
  findImportOf,
  listImports,
  listLaterWork,
  listWaitingLists,
  listWritten,
} from '../../../db/imports.ts';
import { findCompany } from '../../../db/people.ts';
import { imports } from '../../../db/schema/index.ts';
import { guessColumns } from '../../../domain/imports/guessColumns.ts';
import type { ImportMapping } from '../../contract/imports.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound } from '../handler.ts';
import { dayIn } from '../today.ts';
import { attachedTable } from './attachedTable.ts';
import { countsOf, keepImport } from './keepImport.ts';
import { planImport } from './planImport.ts';
import type { Table } from './readTable.ts';

const MOST_ISSUES = 300;
const MOST_SUGGESTIONS = 100;
const SAMPLE_ROWS = 5;
/** Older ones nobody is still putting right. */
const WAITING_DAYS = 60;

export const importHandlers: Handlers<
  'imports.check' | 'imports.run' | 'imports.list' | 'imports.listWaiting' | 'imports.undo'
> = {
  'imports.check': async (input, context) => {
    const { table, fileName, sha256 } = await attachedTable(context, input);
    const mapping = input.mapping ?? firstMapping(context, table);
    const { plan, issues, suggestions } = planImport(context.db, table, mapping, input.decisions, todayOf(context));
    const before = findImportOf(context.db, sha256);
    return {
      fileName,
      encoding: table.encoding,
      delimiter: table.delimiter,
      sheets: [...table.sheets],
      sheetName: table.sheetName,
      headings: [...table.headings],
      rowCount: table.rows.length,
      sample: table.rows.slice(0, SAMPLE_ROWS).map(({ cells }) => cells.map((cell) => cell.slice(0, 200))),
      mapping,
      counts: countsOf(plan),
      issues: issues.slice(0, MOST_ISSUES),
      issueCount: issues.length,
      ambiguousDays: issues.filter(({ code }) => code === 'day-month-ambiguous').length,
      suggestions: suggestions.slice(0, MOST_SUGGESTIONS).map((one) => ({ ...one, others: [...one.others] })),
      suggestionCount: suggestions.length,
      importedBefore: before === undefined ? null : { importedAt: before.importedAt },
    };
  },

  'imports.run': async (input, context) => {
    const { table, fileName, sha256 } = await attachedTable(context, input);
    const today = todayOf(context);
    const before = findImportOf(context.db, sha256);
    if (before !== undefined && !input.isKnownAgain) return fail('imported-before', { importedAt: before.importedAt });
    const { plan, issues } = planImport(context.db, table, input.mapping, input.decisions, today);
    if (issues.length > 0) return fail('import-has-errors', { issueCount: issues.length });
    const importId = context.write((writer) =>
      keepImport(writer, {
        fileName,
        attachmentId: input.attachmentId,
        sheetName: table.sheetName,
        mapping: input.mapping,
        plan,
        today,
        importedById: actorOf(context).staffId,
      }),
    );
    context.services.changed(['customers', 'sites', 'appliances', 'visits', 'registrations', 'imports']);
    return { importId, counts: countsOf(plan) };
  },

  'imports.list': (_input, context) =>
    listImports(context.db).map(({ record, importedByName, undoneByName }) => ({
      importId: record.id,
      fileName: record.fileName,
      counts: record.counts as never,
      importedAt: record.importedAt,
      importedByName,
      undoneAt: record.undoneAt,
      undoneByName,
    })),

  'imports.listWaiting': (_input, context) => [
    ...listWaitingLists(context.store.raw, daysBefore(context.now, WAITING_DAYS)),
  ],

  'imports.undo': (input, context) => {
    const record = findImport(context.db, input.importId);
    if (record === undefined) return notFound('imports', input.importId);
    if (record.undoneAt !== null) return fail('already-undone', {});
    const hangsOn = listLaterWork(context.db, record);
    if (hangsOn.length > 0) return fail('later-work', { hangsOn: [...hangsOn] });
    context.write((writer) => {
      for (const { table, entityId } of listWritten(writer.db, record)) writer.remove(table, entityId);
      writer.update(imports, record.id, { undoneById: actorOf(context).staffId, undoneAt: context.now });
    });
    context.services.changed(['customers', 'sites', 'appliances', 'visits', 'registrations', 'imports']);
    return { removed: record.counts as never };
  },
};

/** What can be told without asking; the order of day and month is never among it. */
export function firstMapping(context: Pick<HandlerContext, 'db'>, table: Table): ImportMapping {
  const columns = guessColumns(table.headings);
  const company = findCompany(context.db);
  const isUs = company?.unitSystem === 'us';
  return {
    columns: [...columns],
    dayOrder: null,
    powerUnit: isUs ? 'Btu/h' : 'kW',
    lengthUnit: isUs ? 'ft' : 'm',
    country: company?.country ?? 'CA',
    buildingKind: 'home',
    customerKind: 'person',
    siteAtCustomer: !columns.includes('siteStreet'),
  };
}

function daysBefore(now: string, days: number): string {
  return new Date(Date.parse(now) - days * 86_400_000).toISOString();
}

function todayOf(context: HandlerContext): string {
  return dayIn(findCompany(context.db)?.timeZone ?? 'UTC', context.now);
}
