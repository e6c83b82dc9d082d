/** Model sheets in and out of the store. */
import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { sheetRevisions } from '../../db/schema/index.ts';
import { findNewestRevision, findRevision, listSheetRevisions } from '../../db/sheets.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { parseModelSheet } from '../../domain/procedure/parseModelSheet.ts';
import { fail, type Handlers, notFound } from './handler.ts';

export const sheetHandlers: Handlers<'sheets.list' | 'sheets.get' | 'sheets.import' | 'sheets.export'> = {
  'sheets.list': (_input, context) => {
    const bySheet = Map.groupBy(listSheetRevisions(context.db), (row) => row.sheetId);
    return [...bySheet.values()].map((rows) => {
      const [newest] = rows as [(typeof rows)[number]];
      const body = newest.body as ModelSheet;
      return {
        sheetId: newest.sheetId,
        title: newest.title,
        maker: newest.maker,
        models: body.models,
        revision: newest.revision,
        revisions: rows.map((row) => row.revision),
        fuels: body.fuels.map((one) => one.fuel),
      };
    });
  },

  'sheets.get': (input, context) => {
    const row =
      input.revision === null
        ? findNewestRevision(context.db, input.sheetId)
        : findRevision(context.db, input.sheetId, input.revision);
    return row === undefined ? notFound('sheet_revisions', input.sheetId) : (row.body as ModelSheet);
  },

  'sheets.import': (input, context) => {
    const sheet = readSheet(input.text);
    const existing = findRevision(context.db, sheet.sheetId, sheet.revision);
    if (existing !== undefined) {
      if (existing.sha256 !== sheetSha256(sheet))
        return fail('revision-differs', { sheetId: sheet.sheetId, revision: sheet.revision });
      return { sheetId: sheet.sheetId, revision: sheet.revision, isNew: false };
    }
    context.write((writer) => addSheetRevision(writer, sheet, `file ${input.fileName}`));
    context.services.changed(['sheets']);
    return { sheetId: sheet.sheetId, revision: sheet.revision, isNew: true };
  },

  'sheets.export': (input, context) => {
    const row = findRevision(context.db, input.sheetId, input.revision);
    if (row === undefined) return notFound('sheet_revisions', `${input.sheetId} ${input.revision}`);
    return { fileName: `${row.sheetId}-${row.revision}.json`, text: `${JSON.stringify(row.body, null, 2)}\n` };
  },
};

export function addSheetRevision(writer: StoreWriter, sheet: ModelSheet, source: string): string {
  return writer.insert(sheetRevisions, {
    sheetId: sheet.sheetId,
    revision: sheet.revision,
    title: sheet.title,
    maker: sheet.maker,
    body: sheet,
    sha256: sheetSha256(sheet),
    addedAt: writer.now,
    source,
  });
}

function readSheet(text: string): ModelSheet {
  let value: unknown;
  try {
    // A byte order mark is common in files saved on Windows and is no part of JSON.
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return fail('not-json', { message: error instanceof Error ? error.message : String(error) });
  }
  const parsed = parseModelSheet(value);
  return parsed.ok ? parsed.value : fail('bad-sheet', { problems: [...parsed.error] });
}

function sheetSha256(sheet: ModelSheet): string {
  return createHash('sha256')
    .update(canonicalize(sheet) ?? '')
    .digest('hex');
}
