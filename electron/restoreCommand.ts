/** `npm run restore`: lists the backups of a data folder, or goes back to one of them, without opening the store. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { openBackupFolder } from '../db/backups.ts';
import { FolderInUse, takeFolderLock } from '../db/folderLock.ts';
import { storePath } from '../db/openStore.ts';
import { openRescue, type Rescue, type RescueCopy } from '../db/rescue.ts';
import { COPY_PROBLEM_WORDS } from '../domain/text/copyProblemWords.ts';
import { hasIntactChains } from './operations/sealChains.ts';

/** What to say, and how the command ends. */
export type CommandAnswer = { readonly lines: readonly string[]; readonly exitCode: 0 | 1 };

export function runRestore(options: {
  readonly dataFolder: string;
  readonly appRoot: string;
  /** Null: only lists. */
  readonly name: string | null;
  readonly now: string;
}): CommandAnswer {
  const { dataFolder, name } = options;
  // Taking the lock would make the folder.
  if (!existsSync(dataFolder)) return refused(`There is no data folder ${dataFolder}. Give it with --data DIR.`);
  try {
    const lock = takeFolderLock(dataFolder);
    try {
      const migrations = join(options.appRoot, 'db', 'migrations');
      const backups = openBackupFolder(join(dataFolder, 'copies'), migrations, hasIntactChains);
      const rescue = openRescue(storePath(dataFolder), backups);
      return name === null ? listed(rescue, dataFolder) : restored(rescue, name, options.now);
    } finally {
      lock.release();
    }
  } catch (error) {
    if (error instanceof FolderInUse) return refused(error.message);
    throw error;
  }
}

function listed(rescue: Rescue, dataFolder: string): CommandAnswer {
  const copies = rescue.list();
  if (copies.length === 0) return refused(`There is no backup in ${rescue.folder}.`);
  const newestWhole = copies.find(({ found }) => found === 'whole');
  return {
    lines: [
      `Backups, newest first, in ${rescue.folder}:`,
      ...copies.map(
        ({ name, byteLength, found }) => `  ${name}  ${Math.ceil(byteLength / 1000)} kB  ${foundWords(found)}`,
      ),
      newestWhole === undefined
        ? 'None of them is whole.'
        : `Go back to the newest whole one: npm run restore -- --data ${dataFolder} ${newestWhole.name}`,
    ],
    exitCode: newestWhole === undefined ? 1 : 0,
  };
}

function restored(rescue: Rescue, name: string, now: string): CommandAnswer {
  const done = rescue.restore(name, now);
  if (!done.ok)
    return refused(
      `${name}: ${done.why === 'not-found' ? `there is no such backup in ${rescue.folder}` : COPY_PROBLEM_WORDS[done.why]}. Nothing was changed.`,
    );
  return {
    lines: [
      `The store is as it was when ${name} was made.`,
      ...(done.replacedKeptAs === null ? [] : [`The damaged or replaced file is kept as ${done.replacedKeptAs}.`]),
    ],
    exitCode: 0,
  };
}

function foundWords(found: RescueCopy['found']): string {
  if (found === 'whole') return 'opened and whole';
  return found === 'not-checked' ? 'not checked' : COPY_PROBLEM_WORDS[found];
}

function refused(line: string): CommandAnswer {
  return { lines: [line], exitCode: 1 };
}
