/** Loading the firm's own table of travel times, saying what it holds, and laying it aside. */
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany } from '../../db/people.ts';
import { travelTables } from '../../db/schema/index.ts';
import { listSiteAddresses } from '../../db/sites.ts';
import { findTravelTable, listTravelTables } from '../../db/travelTables.ts';
import { readTravelRows } from '../../domain/schedule/readTravelRows.ts';
import { namesOf } from '../../domain/schedule/wayPlace.ts';
import { foldForSearch } from '../../domain/text/foldForSearch.ts';
import { actorOf, fail, type HandlerContext, type Handlers } from './handler.ts';
import { attachedTable } from './imports/attachedTable.ts';
import { readWorkforce } from './workforceHandlers.ts';

const MOST_LINES_NAMED = 20;
const MOST_NAMES_NAMED = 20;

export const travelHandlers: Handlers<'travel.getTable' | 'travel.loadTable' | 'travel.dropTable'> = {
  'travel.getTable': (_input, context) => {
    const found = findTravelTable(context.db);
    if (found === undefined) return { table: null };
    const known = placeNames(context.db);
    const names = new Map(found.pairs.flatMap(({ from, to }) => [from, to]).map((name) => [foldForSearch(name), name]));
    const unknown = [...names].filter(([folded]) => !known.has(folded)).map(([, name]) => name);
    const { fileName, loadedAt, loadedByName, pairs } = found;
    return {
      table: {
        fileName,
        loadedAt,
        loadedByName,
        pairCount: pairs.length,
        unknownNames: unknown.slice(0, MOST_NAMES_NAMED),
        unknownCount: unknown.length,
      },
    };
  },

  'travel.loadTable': async ({ attachmentId }, context) => {
    const { table, fileName } = await attachedTable(context, { attachmentId, sheetName: null });
    const read = readTravelRows(table.headings, table.rows);
    if (!read.ok) {
      const { error } = read;
      return error.code === 'columns-missing'
        ? fail('travel-columns-missing', { missing: [...error.missing] })
        : fail('travel-lines-wrong', { lines: error.lines.slice(0, MOST_LINES_NAMED), count: error.lines.length });
    }
    context.write((writer) => {
      for (const { id } of listTravelTables(writer.db)) writer.update(travelTables, id, { withdrawnAt: context.now });
      writer.insert(travelTables, {
        fileName,
        attachmentId,
        pairs: [...read.value],
        loadedById: actorOf(context).staffId,
        loadedAt: context.now,
      });
    });
    tellBoard(context);
    return { pairCount: read.value.length };
  },

  'travel.dropTable': (_input, context) => {
    context.write((writer) => {
      for (const { id } of listTravelTables(writer.db)) writer.update(travelTables, id, { withdrawnAt: context.now });
    });
    tellBoard(context);
    return {};
  },
};

function tellBoard(context: HandlerContext): void {
  context.services.changed(['travel', 'visits', 'planning']);
}

/** Every name under which a way could be looked up today, folded. */
function placeNames(db: ReadableDb): ReadonlySet<string> {
  const company = findCompany(db);
  return new Set([
    ...listSiteAddresses(db).flatMap(namesOf),
    ...(company === undefined ? [] : namesOf(company)),
    ...readWorkforce(db).flatMap(({ name, base }) => [foldForSearch(name), ...namesOf(base)]),
  ]);
}
