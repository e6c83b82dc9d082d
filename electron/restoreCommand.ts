/** `npm run restore`: lists the backups of a data folder, or goes back to one of them, without opening the store. */
import { existsSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { openBackupFolder } from '../db/backups.ts';
import { FolderInUse, takeFolderLock } from '../db/folderLock.ts';
import { storePath } from '../db/openStore.ts';
import { openRescue, type Rescue, type RescueCopy } from '../db/rescue.ts';
import { COPY_PROBLEM_WORDS } from '../domain/text/copyProblemWords.ts';
import { hasIntactChains } from './operations/sealChains.ts';
import { readSecondPlace, rootOf, type SecondPlace, writeSecondPlace } from './secondPlace.ts';

/** What to say, and how the command ends. */
export type CommandAnswer = { readonly lines: readonly string[]; readonly exitCode: 0 | 1 };

export function runRestore(options: {
  readonly dataFolder: string;
  readonly appRoot: string;
  /** The store's own folder at a second place, to go on from it on another computer; null: the one chosen here, if any. */
  readonly from: string | null;
  /** Null: only lists. */
  readonly name: string | null;
  readonly now: string;
}): CommandAnswer {
  const { dataFolder, from, name } = options;
  if (from !== null && !existsSync(join(from, 'copies')))
    return refused(`${from}: there is no folder copies in it. Give the folder whose name begins with lightoff-.`);
  // Taking the lock would make the folder.
  if (from === null && !existsSync(dataFolder))
    return refused(`There is no data folder ${dataFolder}. Give it with --data DIR.`);
  try {
    const lock = takeFolderLock(dataFolder);
    try {
      const migrations = join(options.appRoot, 'db', 'migrations');
      const copiesIn = (folder: string) => openBackupFolder(join(folder, 'copies'), migrations, hasIntactChains);
      const chosen = from === null ? readSecondPlace(dataFolder) : placeAt(from, dataFolder);
      const there = chosen === null ? null : copiesIn(rootOf(chosen));
      const rescue = openRescue(storePath(dataFolder), copiesIn(dataFolder), there);
      if (name === null) return listed(rescue, options);
      const done = restored(rescue, name, options.now);
      // The app brings the photos and files from there by itself.
      if (done.exitCode === 0 && from !== null) writeSecondPlace(dataFolder, chosen);
      return done;
    } finally {
      lock.release();
    }
  } catch (error) {
    if (error instanceof FolderInUse) return refused(error.message);
    throw error;
  }
}

function listed(rescue: Rescue, at: { readonly dataFolder: string; readonly from: string | null }): CommandAnswer {
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
        : `Go back to the newest whole one: npm run restore -- --data ${at.dataFolder}${at.from === null ? '' : ` --from ${at.from}`} ${newestWhole.name}`,
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

function placeAt(from: string, dataFolder: string): SecondPlace {
  return {
    folder: dirname(from),
    within: basename(from),
    lastAt: null,
    lastCopyAt: null,
    isOnSameDisk: statSync(from).dev === statSync(dataFolder).dev,
  };
}

function foundWords(found: RescueCopy['found']): string {
  if (found === 'whole') return 'opened and whole';
  return found === 'not-checked' ? 'not checked' : COPY_PROBLEM_WORDS[found];
}

function refused(line: string): CommandAnswer {
  return { lines: [line], exitCode: 1 };
}
