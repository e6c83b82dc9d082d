/** A store that cannot be opened: which copies there are, and going back to one. Nobody can sign in without a store. */
import { z } from 'zod';
import { copyKind, copyProblem } from './backups.ts';
import { instant, nothing, operation, storeTrouble } from './operation.ts';

const rescueCopy = z.strictObject({
  name: z.string(),
  madeAt: instant,
  byteLength: z.number().int(),
  /** `replaced`: the store that an earlier return put aside. */
  kept: z.enum([...copyKind.options, 'replaced']),
  found: z.enum(['whole', 'not-checked', ...copyProblem.options]),
});
export type RescueCopy = z.output<typeof rescueCopy>;

const storeIsOpen = { 'store-is-open': nothing } as const;

export const rescueOperations = {
  'rescue.look': operation({
    access: 'public',
    input: nothing,
    output: z.strictObject({
      trouble: storeTrouble,
      dataFolder: z.string(),
      folder: z.string(),
      copies: z.array(rescueCopy),
    }),
    errors: storeIsOpen,
  }),
  /** The copy is checked first; the store that was there is kept under the name given back. */
  'rescue.restore': operation({
    access: 'public',
    input: z.strictObject({ name: z.string() }),
    output: z.strictObject({ replacedKeptAs: z.string().nullable() }),
    errors: { ...storeIsOpen, 'copy-damaged': z.strictObject({ why: copyProblem }) },
  }),
} as const;
