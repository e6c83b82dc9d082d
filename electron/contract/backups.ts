/** Copies of the store: made daily, verified by reopening, and restorable. */
import { z } from 'zod';
import { id, instant, nothing, operation, storageFailure } from './operation.ts';

export const copyKind = z.enum(['daily', 'weekly', 'monthly', 'before-update', 'before-restore']);

const copy = z.strictObject({
  name: z.string(),
  madeAt: z.iso.datetime(),
  byteLength: z.number().int(),
  kept: copyKind,
  isVerified: z.boolean(),
});
export type BackupCopy = z.output<typeof copy>;

/** Why a copy is none: what was found on opening it. */
export const copyProblem = z.enum(['integrity', 'foreign-keys', 'seal-chain', 'not-a-store', 'newer-program']);
/** Why a copy could not be made: what it was made of, or where it was to go. */
export const copyFailure = z.enum([...copyProblem.options, ...storageFailure.options]);
/** The last try of this start that failed, as long as none has succeeded since. */
export const copyTrouble = z.strictObject({ at: instant, why: copyFailure });

export const backupOperations = {
  'backups.list': operation({
    access: ['owner', 'dispatcher'],
    input: nothing,
    output: z.strictObject({ folder: z.string(), copies: z.array(copy) }),
  }),
  'backups.make': operation({
    access: ['owner', 'dispatcher'],
    input: nothing,
    output: copy,
    errors: { 'copy-failed': z.strictObject({ why: copyFailure }) },
  }),
  /** The replaced store is kept; everybody is signed out. */
  'backups.restore': operation({
    access: ['owner'],
    input: z.strictObject({ name: z.string() }),
    output: z.strictObject({ replacedKeptAs: z.string().nullable() }),
    errors: {
      'copy-damaged': z.strictObject({ why: copyProblem }),
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
