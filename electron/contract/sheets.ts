/** Model sheets: listed, read, taken in and given out as JSON. A bad file names the field and changes nothing. */
import { z } from 'zod';
import { modelSheet } from '../../domain/procedure/modelSheet.ts';
import { nothing, operation } from './operation.ts';

export const sheetOperations = {
  'sheets.list': operation({
    access: 'signed-in',
    input: nothing,
    output: z.array(
      z.strictObject({
        sheetId: z.string(),
        title: z.string(),
        maker: z.string().nullable(),
        models: z.array(z.string()),
        revision: z.string(),
        revisions: z.array(z.string()),
        fuels: z.array(z.string()),
      }),
    ),
  }),
  /** The newest revision unless one is named. */
  'sheets.get': operation({
    access: 'signed-in',
    input: z.strictObject({ sheetId: z.string(), revision: z.string().nullable().default(null) }),
    output: modelSheet,
  }),
  'sheets.import': operation({
    access: ['owner', 'dispatcher', 'technician'],
    input: z.strictObject({ fileName: z.string().max(300), text: z.string().max(1_000_000) }),
    output: z.strictObject({ sheetId: z.string(), revision: z.string(), isNew: z.boolean() }),
    errors: {
      'not-json': z.strictObject({ message: z.string() }),
      'bad-sheet': z.strictObject({ problems: z.array(z.strictObject({ path: z.string(), message: z.string() })) }),
      /** The same sheet and revision is here with other contents: it needs a revision of its own. */
      'revision-differs': z.strictObject({ sheetId: z.string(), revision: z.string() }),
    },
  }),
  'sheets.export': operation({
    access: 'signed-in',
    input: z.strictObject({ sheetId: z.string(), revision: z.string() }),
    output: z.strictObject({ fileName: z.string(), text: z.string() }),
  }),
} as const;
