/** Taking a list in and out again: looking at it, beginning, following and stopping the one write that does it. */
import {
  findImport,
  findImportOf,
  findListWork,
  listImports,
  listListWorks,
  listWaitingLists,
} from '../../../db/imports.ts';
import type { LongWriteOptions } from '../../../db/longWrite.ts';
import { findCompany } from '../../../db/people.ts';
import { listWorks } from '../../../db/schema/index.ts';
import { guessColumns } from '../../../domain/imports/guessColumns.ts';
import type { ImportMapping, ListWorkKind } from '../../contract/imports.ts';
import { companyToday } from '../companyToday.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound } from '../handler.ts';
import { attachedTable } from './attachedTable.ts';
import { countsOf } from './keepImport.ts';
import type { ListWorkOrder } from './listWorks.ts';
import { planImport, suggestSame } from './planImport.ts';
import type { Table } from './readTable.ts';
import { takeIn } from './takeIn.ts';
import { takeOut } from './takeOut.ts';

const MOST_ISSUES = 300;
const MOST_SUGGESTIONS = 100;
const SAMPLE_ROWS = 5;
/** Older ones nobody is still putting right. */
const WAITING_DAYS = 60;

export const importHandlers: Handlers<
  | 'imports.check'
  | 'imports.start'
  | 'imports.startUndo'
  | 'imports.follow'
  | 'imports.stop'
  | 'imports.list'
  | 'imports.listWaiting'
  | 'imports.listWorks'
  | 'imports.forgetCutOff'
> = {
  'imports.check': async (input, context) => {
    const { table, fileName, sha256 } = await attachedTable(context, input);
    const mapping = input.mapping ?? firstMapping(context, table);
    const { plan, issues } = planImport(context.db, table, mapping, input.decisions, companyToday(context));
    const suggestions = suggestSame(context.db, plan, input.decisions);
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

  'imports.start': async (input, context) => {
    const { table, fileName, sha256 } = await attachedTable(context, input);
    const { mapping } = input;
    const today = companyToday(context);
    const before = findImportOf(context.db, sha256);
    if (before !== undefined && !input.isKnownAgain) return fail('imported-before', { importedAt: before.importedAt });
    const { plan, issues } = planImport(context.db, table, mapping, input.decisions, today);
    if (issues.length > 0) return fail('import-has-errors', { issueCount: issues.length });
    const counts = countsOf(plan);
    return begin(context, {
      kind: 'take-in',
      fileName,
      options: { foundRows: counts.customers + counts.appliances },
      work: ({ writer }) =>
        takeIn(writer, {
          fileName,
          attachmentId: input.attachmentId,
          sheetName: table.sheetName,
          mapping,
          plan,
          today,
          importedById: actorOf(context).staffId,
        }),
    });
  },

  'imports.startUndo': (input, context) => {
    const record = findImport(context.db, input.importId);
    if (record === undefined) return notFound('imports', input.importId);
    if (record.undoneAt !== null) return fail('already-undone', {});
    const { customers = 0, appliances = 0 } = record.counts;
    return begin(context, {
      kind: 'take-out',
      fileName: record.fileName,
      options: { foundRows: customers + appliances, isPointersChecked: true },
      work: (long) => takeOut(long, record, actorOf(context).staffId),
    });
  },

  'imports.follow': async (input, context) => {
    const progress = await context.services.listWorks.follow(input.workId, FOLLOW_MS);
    return progress ?? fail('list-work-stopped', {});
  },

  'imports.stop': (input, context) => {
    const isStopped = context.services.listWorks.stop(input.workId);
    if (isStopped) context.write((writer) => writer.remove(listWorks, input.workId));
    context.services.changed(['imports']);
    return { isStopped };
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

  'imports.listWorks': (_input, context) =>
    listListWorks(context.db).map(({ work, begunByName }) => ({
      workId: work.id,
      kind: work.kind as ListWorkKind,
      fileName: work.fileName,
      begunAt: work.begunAt,
      begunByName,
      isGoing: work.id === context.services.listWorks.going(),
    })),

  'imports.forgetCutOff': (input, context) => {
    if (findListWork(context.db, input.workId) === undefined) return notFound('list_works', input.workId);
    if (context.services.listWorks.going() === input.workId) return fail('list-work-going', {});
    context.write((writer) => writer.remove(listWorks, input.workId));
    context.services.changed(['imports']);
    return {};
  },
};

/** What a screen waits for one answer: the bar moves several times a second, and who stops is answered at once. */
const FOLLOW_MS = 200;

/** Marked first in a write of its own: a start that finds the mark knows that this was cut off. */
function begin(
  context: HandlerContext,
  order: {
    readonly kind: ListWorkKind;
    readonly fileName: string;
    readonly options: LongWriteOptions;
    readonly work: ListWorkOrder['work'];
  },
): { readonly workId: string } {
  const { listWorks: works, changed, logFault } = context.services;
  if (works.going() !== null) return fail('list-work-going', {});
  const begunById = actorOf(context).staffId;
  const { kind, fileName } = order;
  const workId = context.write((writer) =>
    writer.insert(listWorks, { kind, fileName, begunById, begunAt: context.now }),
  );
  works.start({
    workId,
    long: context.store.beginLong({ actorId: begunById, now: context.now }, order.options),
    *work(long) {
      long.writer.remove(listWorks, workId);
      return yield* order.work(long);
    },
    onEnd(isKept) {
      try {
        if (!isKept) context.write((writer) => writer.remove(listWorks, workId));
      } catch (error) {
        // On a full disk the mark stays, and says the truth: it was cut off.
        logFault(error);
      }
      changed(isKept ? ['customers', 'sites', 'appliances', 'visits', 'registrations', 'imports'] : ['imports']);
    },
  });
  changed(['imports']);
  return { workId };
}

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
