/** Brings the newest backup and every new file to the second place, and from there what the store misses here. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { copyFile, mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { syncFolder } from './attachmentFiles.ts';
import type { BackupFolder } from './backups.ts';

/** The store's own folder is not there: the disk is not plugged in, the share not reached, or it is another one. */
export class SecondPlaceNotReached extends Error {
  constructor(root: string) {
    super(`the second place is not there: ${root}`);
    this.name = 'SecondPlaceNotReached';
  }
}

export type CarriedOver = {
  /** The newest backup that is there now. */
  readonly newestCopyAt: string | null;
  readonly files: number;
  /** Files that were missing here and are back. */
  readonly fetched: number;
  /** Files here whose bytes no longer match their name: not brought over. */
  readonly damaged: number;
};

export async function carryOver(options: {
  readonly root: string;
  readonly here: BackupFolder;
  readonly there: BackupFolder;
  readonly attachments: string;
  /** The files that the store speaks of, by SHA-256. */
  readonly wanted: readonly string[];
  readonly isStopped: () => boolean;
}): Promise<CarriedOver> {
  const { root, here, there, attachments } = options;
  if (!(await isFolder(root))) throw new SecondPlaceNotReached(root);
  const newest = here.list().find(({ kept }) => kept !== 'before-update' && kept !== 'before-restore');
  if (newest !== undefined && !there.list().some(({ name }) => name === newest.name)) {
    const from = here.pathOf(newest.name);
    if (!(await copyDurably(from, there.pathOf(newest.name), await sha256Of(from))))
      throw new Error('the backup reads differently at the second place');
    there.prune();
  }
  const away = join(root, 'attachments');
  const hereNow = await filesIn(attachments);
  const thereNow = await filesIn(away);
  let [files, fetched, damaged] = [0, 0, 0];
  for (const sha256 of hereNow) {
    if (options.isStopped()) break;
    if (thereNow.has(sha256)) continue;
    if (await copyDurably(pathIn(attachments, sha256), pathIn(away, sha256), sha256)) files += 1;
    else damaged += 1;
  }
  for (const sha256 of options.wanted) {
    if (options.isStopped()) break;
    if (hereNow.has(sha256) || !thereNow.has(sha256)) continue;
    if (await copyDurably(pathIn(away, sha256), pathIn(attachments, sha256), sha256)) fetched += 1;
  }
  return { newestCopyAt: there.list()[0]?.madeAt ?? null, files, fetched, damaged };
}

/** Written aside, synced and read back before it has its name. False: what was read back is not what was meant. */
async function copyDurably(from: string, to: string, sha256: string): Promise<boolean> {
  const aside = `${to}.part`;
  await mkdir(dirname(to), { recursive: true });
  try {
    await copyFile(from, aside);
    const file = await open(aside, 'r+');
    try {
      await file.sync();
    } finally {
      await file.close();
    }
    if ((await sha256Of(aside)) !== sha256) return false;
    await rename(aside, to);
    syncFolder(dirname(to));
    return true;
  } finally {
    await rm(aside, { force: true });
  }
}

async function sha256Of(path: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(path), hash);
  return hash.digest('hex');
}

/** By SHA-256; the folder holds one folder for each first two letters. */
async function filesIn(folder: string): Promise<ReadonlySet<string>> {
  if (!(await isFolder(folder))) return new Set();
  const names = await readdir(folder, { recursive: true });
  return new Set(names.flatMap((name) => /[0-9a-f]{64}$/.exec(name)?.[0] ?? []));
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (about) => about.isDirectory(),
    () => false,
  );
}

function pathIn(folder: string, sha256: string): string {
  return join(folder, sha256.slice(0, 2), sha256);
}
