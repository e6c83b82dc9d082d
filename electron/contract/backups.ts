/** Copies of the store: made daily, verified by reopening, and restorable. */
import { z } from 'zod';
import { id, nothing, operation } from './operation.ts';

const copy = z.strictObject({
  name: z.string(),
  madeAt: z.iso.datetime(),
  byteLength: z.number().int(),
  kept: z.enum(['daily', 'weekly', 'monthly', 'before-update', 'before-restore']),
  isVerified: z.boolean(),
});
export type BackupCopy = z.output<typeof copy>;

export const backupOperations = {
  'backups.list': operation({
    access: ['owner', 'dispatcher'],
    input: nothing,
    output: z.strictObject({ folder: z.string(), copies: z.array(copy) }),
  }),
  'backups.make': operation({ access: ['owner', 'dispatcher'], input: nothing, output: copy }),
  /** The replaced store is kept; everybody is signed out. */
  'backups.restore': operation({
    access: ['owner'],
    input: z.strictObject({ name: z.string() }),
    output: z.strictObject({ replacedKeptAs: z.string() }),
    errors: {
      'copy-damaged': z.strictObject({
        why: z.enum(['integrity', 'foreign-keys', 'seal-chain', 'not-a-store', 'newer-program']),
      }),
    },
  }),
  'history.list': operation({
    access: 'signed-in',
    input: z.strictObject({ entity: z.string(), entityId: id }),
    output: z.array(
      z.strictObject({
        at: z.iso.datetime(),
        byName: z.string().nullable(),
        kind: z.string(),
        fields: z.record(z.string(), z.unknown()),
      }),
    ),
  }),
} as const;
