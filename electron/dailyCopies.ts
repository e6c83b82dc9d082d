/**
 * The copy of each day: made at the start and looked after every hour, so that a program left open has one too. Whatever goes
 * wrong with it never stops the work; it is kept to be shown, and tried again the next hour.
 */
import { type BackupFolder, CopyNotWhole, type CopyProblem, kindForToday } from '../db/backups.ts';
import type { Store } from '../db/openStore.ts';
import { type StorageFailure, storageFailureOf } from './operations/storageFailure.ts';

export type CopyFailure = { readonly at: string; readonly why: CopyProblem | StorageFailure };

export type DailyCopies = {
  /** Makes today's copy unless there is one. */
  readonly look: () => void;
  /** Why the last copy that was tried could not be made; null once one was. */
  readonly failure: () => CopyFailure | null;
  /** Makes a copy now; throws when it cannot be made, which is kept as the failure too. */
  readonly make: () => ReturnType<BackupFolder['make']>;
  /** Another store is open: what went wrong with the old one says nothing of it. */
  readonly forget: () => void;
  readonly stop: () => void;
};

const LOOK_EVERY_MS = 3_600_000;

export function keepDailyCopies(options: {
  readonly backups: () => BackupFolder;
  readonly store: () => Store;
  /** The demo can be made anew, and before the first run there is nothing: neither is copied by itself. */
  readonly isWanted: () => boolean;
  /** What is to be in the copy of a new day. */
  readonly beforeNewDay: () => void;
  readonly clock: () => string;
  readonly logFault: (error: unknown) => void;
  /** A copy was made, or could not be. */
  readonly changed: () => void;
}): DailyCopies {
  const { clock } = options;
  let failure: CopyFailure | null = null;

  function make(): ReturnType<BackupFolder['make']> {
    try {
      const backups = options.backups();
      const made = backups.make(options.store().raw, kindForToday(backups.list(), clock()), clock());
      failure = null;
      return made;
    } catch (error) {
      failure = { at: clock(), why: whyNot(error) };
      throw error;
    }
  }

  function look(): void {
    if (!options.isWanted()) return;
    try {
      const today = clock().slice(0, 10);
      if (
        options
          .backups()
          .list()
          .some((copy) => copy.madeAt.startsWith(today))
      )
        return;
      options.beforeNewDay();
      make();
    } catch (error) {
      failure = { at: clock(), why: whyNot(error) };
      options.logFault(error);
    }
    options.changed();
  }

  const forget = (): void => {
    failure = null;
  };
  const timer = setInterval(look, LOOK_EVERY_MS);
  timer.unref();
  return { look, make, failure: () => failure, forget, stop: () => clearInterval(timer) };
}

function whyNot(error: unknown): CopyFailure['why'] {
  return error instanceof CopyNotWhole ? error.problem : (storageFailureOf(error) ?? 'failed');
}
