/** Sheets in the making: begun from a published revision, changed edit by edit, published as a revision of their own. */
import { z } from 'zod';
import { sheetEdit } from '../../domain/procedure/sheetEdit.ts';
import { id, instant, line, nothing, operation } from './operation.ts';

const WRITERS = ['owner', 'dispatcher', 'technician'] as const;
const sheetKey = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case words joined by hyphens')
  .max(80);
const editCount = z.number().int().min(0);

/** Somebody else, or another window, changed the draft meanwhile; or it was published or thrown away. */
const draftErrors = {
  'draft-changed': z.strictObject({ editCount }),
  'draft-ended': nothing,
} as const;

const draftRow = z.strictObject({
  draftId: id,
  fromSheetId: z.string(),
  fromRevision: z.string(),
  title: z.string(),
  startedByName: z.string(),
  startedAt: instant,
  lastEditAt: instant.nullable(),
});

export const sheetDraftOperations = {
  /** Those under way, newest first. */
  'sheetDrafts.list': operation({ access: 'signed-in', input: nothing, output: z.array(draftRow) }),
  /** The last ones thrown away, the latest first. */
  'sheetDrafts.listDiscarded': operation({
    access: 'signed-in',
    input: nothing,
    output: z.array(draftRow.extend({ discardedAt: instant })),
  }),
  /** `asSheet` null: the next revision of the same sheet. */
  'sheetDrafts.start': operation({
    access: WRITERS,
    input: z.strictObject({
      sheetId: z.string().max(100),
      revision: z.string().max(20),
      asSheet: z.strictObject({ sheetId: sheetKey, title: line }).nullable(),
    }),
    output: z.strictObject({ draftId: id }),
    errors: { 'sheet-exists': z.strictObject({ sheetId: z.string() }) },
  }),
  /** The draft as it stands: any JSON, whatever is still wrong with it. */
  'sheetDrafts.get': operation({
    access: 'signed-in',
    input: z.strictObject({ draftId: id }),
    output: z.strictObject({
      draftId: id,
      fromSheetId: z.string(),
      fromRevision: z.string(),
      body: z.json(),
      editCount,
      /** What undoing would take back; null: nothing was changed. */
      lastEdit: sheetEdit.nullable(),
    }),
  }),
  /** `editCount` says which state of the draft the edit was made on. */
  'sheetDrafts.edit': operation({
    access: WRITERS,
    input: z.strictObject({ draftId: id, editCount, edit: sheetEdit }),
    output: z.strictObject({ editCount }),
    errors: { ...draftErrors, 'no-such-place': nothing },
  }),
  'sheetDrafts.undo': operation({
    access: WRITERS,
    input: z.strictObject({ draftId: id, editCount }),
    output: z.strictObject({ editCount }),
    errors: { ...draftErrors, 'nothing-to-undo': nothing },
  }),
  'sheetDrafts.discard': operation({
    access: WRITERS,
    input: z.strictObject({ draftId: id }),
    output: nothing,
    errors: { 'draft-ended': nothing },
  }),
  /** One thrown away is in the making again, as it was left. */
  'sheetDrafts.takeUp': operation({
    access: WRITERS,
    input: z.strictObject({ draftId: id }),
    output: nothing,
    errors: { 'draft-not-thrown-away': nothing },
  }),
  /** Makes it a revision, for visits begun from now on. Nothing of it changes afterwards. */
  'sheetDrafts.publish': operation({
    access: WRITERS,
    input: z.strictObject({ draftId: id, editCount }),
    output: z.strictObject({ sheetId: z.string(), revision: z.string() }),
    errors: {
      ...draftErrors,
      'bad-sheet': z.strictObject({ problems: z.array(z.strictObject({ path: z.string(), message: z.string() })) }),
      'revision-not-newer': z.strictObject({ newest: z.string() }),
    },
  }),
} as const;
