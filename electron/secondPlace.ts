/**
 * A second place for backups and files: another disk, a stick, a share. Which one is a setting of this computer, kept beside the
 * store and not in it. In the folder that was chosen lies one of the store's own, made when it was chosen and never again: where
 * that one is missing, another disk is plugged in or none, and nothing is written.
 */
import { existsSync, mkdirSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs';
import { isAbsolute, join, sep } from 'node:path';
import { z } from 'zod';
import { writeDurably } from '../db/attachmentFiles.ts';

const secondPlace = z.strictObject({
  /** As it was chosen. */
  folder: z.string(),
  /** The store's own folder in it. */
  within: z.string(),
  /** Everything that was here at this moment is there too. */
  lastAt: z.string().nullable(),
  /** When the newest backup there was made. */
  lastCopyAt: z.string().nullable(),
  /** A disk that fails takes with it what lies beside it. */
  isOnSameDisk: z.boolean(),
});
export type SecondPlace = z.output<typeof secondPlace>;

export type FolderRefused = 'not-a-full-path' | 'not-there' | 'inside-data' | 'not-writable';

/** null: none was chosen, or the setting cannot be read. */
export function readSecondPlace(dataFolder: string): SecondPlace | null {
  const path = settingPath(dataFolder);
  if (!existsSync(path)) return null;
  try {
    return secondPlace.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    return null;
  }
}

export function writeSecondPlace(dataFolder: string, place: SecondPlace | null): void {
  if (place === null) rmSync(settingPath(dataFolder), { force: true });
  else writeDurably(settingPath(dataFolder), Buffer.from(`${JSON.stringify(place, null, 2)}\n`));
}

/** Chooses a folder and makes the store's own in it; one that is there from before is gone on with. */
export function chooseSecondPlace(
  folder: string,
  dataFolder: string,
  deviceId: string,
): { readonly ok: true; readonly place: SecondPlace } | { readonly ok: false; readonly why: FolderRefused } {
  if (!isAbsolute(folder)) return { ok: false, why: 'not-a-full-path' };
  if (!existsSync(folder) || !statSync(folder).isDirectory()) return { ok: false, why: 'not-there' };
  const real = realpathSync(folder);
  if (`${real}${sep}`.startsWith(`${realpathSync(dataFolder)}${sep}`)) return { ok: false, why: 'inside-data' };
  const isOnSameDisk = statSync(real).dev === statSync(dataFolder).dev;
  const place = { folder, within: `lightoff-${deviceId}`, lastAt: null, lastCopyAt: null, isOnSameDisk };
  try {
    mkdirSync(join(rootOf(place), 'copies'), { recursive: true });
    mkdirSync(join(rootOf(place), 'attachments'), { recursive: true });
    writeDurably(join(rootOf(place), 'README.txt'), Buffer.from(README));
  } catch {
    return { ok: false, why: 'not-writable' };
  }
  return { ok: true, place };
}

export function rootOf(place: Pick<SecondPlace, 'folder' | 'within'>): string {
  return join(place.folder, place.within);
}

function settingPath(dataFolder: string): string {
  return join(dataFolder, 'second-place.json');
}

const README = `Backups of Lightoff: copies/ holds the data, attachments/ the photos and files by their SHA-256.
To go on from here on another computer, with Lightoff closed:

  npm run restore -- --data NEW_DATA_FOLDER --from THIS_FOLDER            lists the backups
  npm run restore -- --data NEW_DATA_FOLDER --from THIS_FOLDER NAME       goes on from one of them

The photos and files follow by themselves once Lightoff is open and this folder is still there.
`;
