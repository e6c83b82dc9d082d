/** Sheets in the making. A draft is what it began as with its edits done in order; it becomes a revision only when no rule is broken. */
import type { ReadableDb } from '../../db/openStore.ts';
import { sheetDraftEdits, sheetDrafts } from '../../db/schema/index.ts';
import {
  findSheetDraft,
  listDiscardedSheetDrafts,
  listOpenSheetDrafts,
  listSheetDraftEdits,
  type SheetDraftEditRow,
  type SheetDraftRow,
} from '../../db/sheetDrafts.ts';
import { findNewestRevision, findRevision, getRevisionById, listSheetRevisions } from '../../db/sheets.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { parseModelSheet } from '../../domain/procedure/parseModelSheet.ts';
import { applySheetEdit, type Json, type SheetEdit } from '../../domain/procedure/sheetEdit.ts';
import { compareRevisions, nextRevision } from '../../domain/procedure/sheetRevision.ts';
import { companyToday } from './companyToday.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import { addSheetRevision } from './sheetHandlers.ts';

export const sheetDraftHandlers: Handlers<
  | 'sheetDrafts.list'
  | 'sheetDrafts.start'
  | 'sheetDrafts.get'
  | 'sheetDrafts.edit'
  | 'sheetDrafts.undo'
  | 'sheetDrafts.discard'
  | 'sheetDrafts.listDiscarded'
  | 'sheetDrafts.takeUp'
  | 'sheetDrafts.publish'
> = {
  'sheetDrafts.list': (_input, context) => listOpenSheetDrafts(context.db).map((row) => toDraftRow(context.db, row)),

  'sheetDrafts.listDiscarded': (_input, context) =>
    listDiscardedSheetDrafts(context.db, SHOWN_DISCARDED).map((row) => ({
      ...toDraftRow(context.db, row),
      discardedAt: row.draft.discardedAt ?? '',
    })),

  'sheetDrafts.start': (input, context) => {
    const from =
      findRevision(context.db, input.sheetId, input.revision) ??
      notFound('sheet_revisions', `${input.sheetId} ${input.revision}`);
    const { asSheet } = input;
    if (asSheet !== null && findNewestRevision(context.db, asSheet.sheetId) !== undefined)
      return fail('sheet-exists', { sheetId: asSheet.sheetId });
    const today = companyToday(context);
    const edits: readonly SheetEdit[] = [
      set('sheetId', asSheet?.sheetId ?? from.sheetId),
      set('title', asSheet?.title ?? from.title),
      set('revision', nextRevision(asSheet === null ? revisionsOf(context.db, from.sheetId) : [], today)),
      set('issuedOn', today),
    ];
    const { staffId } = actorOf(context);
    const draftId = context.write((writer) => {
      const id = writer.insert(sheetDrafts, {
        fromRevisionId: from.id,
        startedById: staffId,
        startedAt: context.now,
      });
      for (const [index, edit] of edits.entries()) addEdit(writer, id, index + 1, edit, staffId);
      return id;
    });
    context.services.changed(['sheets']);
    return { draftId };
  },

  'sheetDrafts.get': (input, context) => {
    const draft = findSheetDraft(context.db, input.draftId) ?? notFound('sheet_drafts', input.draftId);
    const edits = listSheetDraftEdits(context.db, draft.id);
    const from = getRevisionById(context.db, draft.fromRevisionId);
    return {
      draftId: draft.id,
      fromSheetId: from.sheetId,
      fromRevision: from.revision,
      body: bodyOf(context.db, draft, edits),
      editCount: countOf(edits),
      lastEdit: lastUndoable(edits)?.edit ?? null,
    };
  },

  'sheetDrafts.edit': (input, context) => {
    const { draft, edits } = requireDraft(input, context);
    const changed = applySheetEdit(bodyOf(context.db, draft, edits), input.edit);
    if (!changed.ok) return fail(changed.error, {});
    context.write((writer) => addEdit(writer, draft.id, edits.length + 1, input.edit, actorOf(context).staffId));
    context.services.changed(['sheets']);
    return { editCount: countOf(edits) + 1 };
  },

  'sheetDrafts.undo': (input, context) => {
    const { edits } = requireDraft(input, context);
    const last = lastUndoable(edits) ?? fail('nothing-to-undo', {});
    context.write((writer) => writer.update(sheetDraftEdits, last.id, { undoneAt: context.now }));
    context.services.changed(['sheets']);
    return { editCount: countOf(edits) + 1 };
  },

  'sheetDrafts.discard': (input, context) => {
    const draft = findSheetDraft(context.db, input.draftId) ?? notFound('sheet_drafts', input.draftId);
    requireOpen(draft);
    context.write((writer) => writer.update(sheetDrafts, draft.id, { discardedAt: context.now }));
    context.services.changed(['sheets']);
    return {};
  },

  'sheetDrafts.takeUp': (input, context) => {
    const draft = findSheetDraft(context.db, input.draftId) ?? notFound('sheet_drafts', input.draftId);
    if (draft.discardedAt === null) return fail('draft-not-thrown-away', {});
    context.write((writer) => writer.update(sheetDrafts, draft.id, { discardedAt: null }));
    context.services.changed(['sheets']);
    return {};
  },

  'sheetDrafts.publish': (input, context) => {
    const { draft, edits } = requireDraft(input, context);
    const parsed = parseModelSheet(bodyOf(context.db, draft, edits));
    if (!parsed.ok) return fail('bad-sheet', { problems: [...parsed.error] });
    const { sheetId, revision } = parsed.value;
    const newest = findNewestRevision(context.db, sheetId)?.revision;
    if (newest !== undefined && compareRevisions(revision, newest) <= 0) return fail('revision-not-newer', { newest });
    context.write((writer) => {
      const publishedRevisionId = addSheetRevision(writer, parsed.value, 'written in the app');
      writer.update(sheetDrafts, draft.id, { publishedRevisionId });
    });
    context.services.changed(['sheets']);
    return { sheetId, revision };
  },
};

/** Older ones nobody is looking for. */
const SHOWN_DISCARDED = 20;

function toDraftRow(db: ReadableDb, { draft, from, startedByName }: ReturnType<typeof listOpenSheetDrafts>[number]) {
  const edits = listSheetDraftEdits(db, draft.id);
  return {
    draftId: draft.id,
    fromSheetId: from.sheetId,
    fromRevision: from.revision,
    title: titleOf(bodyOf(db, draft, edits)) ?? from.title,
    startedByName,
    startedAt: draft.startedAt,
    lastEditAt: edits.findLast((row) => row.undoneAt === null)?.at ?? null,
  };
}

function set(key: string, value: string): SheetEdit {
  return { kind: 'set', path: [key], value };
}

function addEdit(writer: StoreWriter, draftId: string, position: number, edit: SheetEdit, byId: string): void {
  writer.insert(sheetDraftEdits, { draftId, position, edit, byId, at: writer.now });
}

function requireOpen(draft: SheetDraftRow): void {
  if (draft.publishedRevisionId !== null || draft.discardedAt !== null) fail('draft-ended', {});
}

function requireDraft(
  input: { readonly draftId: string; readonly editCount: number },
  context: HandlerContext,
): { readonly draft: SheetDraftRow; readonly edits: readonly SheetDraftEditRow[] } {
  const draft = findSheetDraft(context.db, input.draftId) ?? notFound('sheet_drafts', input.draftId);
  requireOpen(draft);
  const edits = listSheetDraftEdits(context.db, draft.id);
  if (countOf(edits) !== input.editCount) return fail('draft-changed', { editCount: countOf(edits) });
  return { draft, edits };
}

function bodyOf(db: ReadableDb, draft: SheetDraftRow, edits: readonly SheetDraftEditRow[]): Json {
  return edits
    .filter((row) => row.undoneAt === null)
    .reduce<Json>((body, { edit, position }) => {
      const changed = applySheetEdit(body, edit);
      if (!changed.ok) throw new Error(`edit ${position} of draft ${draft.id} does not fit`);
      return changed.value;
    }, getRevisionById(db, draft.fromRevisionId).body as Json);
}

/** The name, title, revision and day a draft begins with are no edit of anybody's. */
const BEGINNING = 4;

function lastUndoable(edits: readonly SheetDraftEditRow[]): SheetDraftEditRow | undefined {
  return edits.findLast((row) => row.undoneAt === null && row.position > BEGINNING);
}

/** Grows with each edit and each one taken back: two that are equal mean the same draft. */
function countOf(edits: readonly SheetDraftEditRow[]): number {
  return edits.length + edits.filter((row) => row.undoneAt !== null).length;
}

function titleOf(body: Json): string | null {
  return typeof body === 'object' && body !== null && !Array.isArray(body) && typeof body['title'] === 'string'
    ? body['title']
    : null;
}

function revisionsOf(db: ReadableDb, sheetId: string): readonly string[] {
  return listSheetRevisions(db).flatMap((row) => (row.sheetId === sheetId ? [row.revision] : []));
}
