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
  /** `second`: it lies at the second place alone. */
  where: z.enum(['here', 'second', 'both']),
});
export type BackupCopy = z.output<typeof copy>;

/** Why a copy is none: what was found on opening it. */
export const copyProblem = z.enum(['integrity', 'foreign-keys', 'seal-chain', 'not-a-store', 'newer-program']);
/** Why a copy could not be made: what it was made of, or where it was to go. */
export const copyFailure = z.enum([...copyProblem.options, ...storageFailure.options]);
/** The last try of this start that failed, as long as none has succeeded since. */
export const copyTrouble = z.strictObject({ at: instant, why: copyFailure });

/** The last time a backup was gone back to beside the store, to see that it can be. */
export const rehearsal = z.strictObject({
  at: instant,
  copyName: z.string(),
  problem: z.enum([...copyProblem.options, 'cannot-open', 'rows-missing']).nullable(),
  rowCount: z.number().int(),
});
export type Rehearsal = z.output<typeof rehearsal>;

/** What is known of the second place. */
const secondPlace = z.strictObject({
  folder: z.string(),
  /** Everything that was here at this moment is there too; null: never yet. */
  lastAt: instant.nullable(),
  lastCopyAt: instant.nullable(),
  isOnSameDisk: z.boolean(),
  /** The last try of this start, where it failed. */
  trouble: z.strictObject({ at: instant, why: z.enum(['not-reached', ...storageFailure.options]) }).nullable(),
  damagedFiles: z.number().int(),
});
export type SecondPlaceStatus = z.output<typeof secondPlace>;

export const backupOperations = {
  'backups.list': operation({
    access: ['owner', 'dispatcher'],
    input: nothing,
    output: z.strictObject({
      folder: z.string(),
      copies: z.array(copy),
      /** null: none was tried out yet. */
      lastTriedOut: rehearsal.nullable(),
      /** null: none was chosen. */
      secondPlace: secondPlace.nullable(),
    }),
  }),
  'backups.make': operation({
    access: ['owner', 'dispatcher'],
    input: nothing,
    output: copy,
    errors: { 'copy-failed': z.strictObject({ why: copyFailure }) },
  }),
  /** A folder on another disk; null: none any more, and what lies there stays. Kept on this computer alone. */
  'backups.chooseSecondPlace': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ folder: z.string().trim().min(1).max(1000).nullable() }),
    output: nothing,
    errors: {
      'folder-refused': z.strictObject({
        folder: z.string(),
        why: z.enum(['not-a-full-path', 'not-there', 'inside-data', 'not-writable']),
      }),
      'in-demo': nothing,
    },
  }),
  /** Makes a backup and brings it and all files to the second place; answers once they are there or it has failed. */
  'backups.carryOver': operation({
    access: 'signed-in',
    input: nothing,
    output: z.strictObject({ secondPlace: secondPlace.nullable() }),
    errors: { 'copy-failed': z.strictObject({ why: copyFailure }), 'in-demo': nothing },
  }),
  /** What has a second copy, as far as this computer knows. */
  'backups.secondCopy': operation({
    access: 'signed-in',
    input: nothing,
    output: z.strictObject({ secondPlace: secondPlace.nullable() }),
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
