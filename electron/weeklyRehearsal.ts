/**
 * Once a week the newest backup of an earlier day is tried out. What came of it lies beside the backups, so that a program that
 * is started anew every morning does not do it every morning.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { writeDurably } from '../db/attachmentFiles.ts';
import type { BackupFolder } from '../db/backups.ts';
import type { Rehearsed } from '../db/rehearseRestore.ts';
import { type Rehearsal, rehearsal } from './contract/backups.ts';

export type WeeklyRehearsal = {
  /** Tries a backup out where the last time is a week ago or more; resolves when that is done. */
  readonly look: () => Promise<void>;
  /** null: none was tried out yet. */
  readonly last: () => Rehearsal | null;
  readonly stop: () => void;
};

export type RehearsalOrder = {
  readonly copiesFolder: string;
  readonly copyName: string;
  readonly scratchFolder: string;
  readonly migrationsFolder: string;
  readonly now: string;
};

const EVERY_MS = 7 * 86_400_000;
const LOOK_EVERY_MS = 3_600_000;
/** Not while everybody waits for the first screen. */
const FIRST_LOOK_MS = 300_000;

export function keepWeeklyRehearsal(options: {
  readonly backups: BackupFolder;
  readonly migrationsFolder: string;
  readonly workerUrl: URL;
  /** The demo has no backups. */
  readonly isWanted: () => boolean;
  readonly clock: () => string;
  readonly logFault: (error: unknown) => void;
  readonly changed: () => void;
}): WeeklyRehearsal {
  const { backups, clock } = options;
  const resultPath = join(backups.folder, 'tried-out.json');
  let running: Worker | null = null;
  let isStopped = false;

  function last(): Rehearsal | null {
    if (!existsSync(resultPath)) return null;
    try {
      return rehearsal.parse(JSON.parse(readFileSync(resultPath, 'utf8')));
    } catch {
      // Whatever lies there: the next try writes it anew.
      return null;
    }
  }

  function copyToTry(): string | null {
    const now = clock();
    const before = last();
    const copies = backups.list();
    // After one that does not hold, the next one is tried out as soon as it is there.
    if (before !== null && before.problem !== null) {
      const newest = copies[0]?.name ?? null;
      return newest === before.copyName ? null : newest;
    }
    const isFresh = before !== null && before.at <= now && Date.parse(now) - Date.parse(before.at) < EVERY_MS;
    return isFresh ? null : (copies.find(({ madeAt }) => madeAt.slice(0, 10) < now.slice(0, 10))?.name ?? null);
  }

  async function look(): Promise<void> {
    if (!options.isWanted() || running !== null) return;
    const copyName = copyToTry();
    if (copyName === null) return;
    const now = clock();
    try {
      const { problem, rowCount } = await tryOut({
        copiesFolder: backups.folder,
        copyName,
        scratchFolder: join(backups.folder, 'trying-out'),
        migrationsFolder: options.migrationsFolder,
        now,
      });
      const result: Rehearsal = { at: now, copyName, problem, rowCount };
      writeDurably(resultPath, Buffer.from(`${JSON.stringify(result, null, 2)}\n`));
      options.changed();
    } catch (error) {
      // Of the place, not of the backup: it is tried again the next hour. Cut off by the end of the program it is no fault.
      if (!isStopped) options.logFault(error);
    }
  }

  function tryOut(order: RehearsalOrder): Promise<Rehearsed> {
    return new Promise((resolve, reject) => {
      const worker = new Worker(options.workerUrl, { workerData: order });
      running = worker;
      worker.once('message', resolve);
      worker.once('error', reject);
      worker.once('exit', () => {
        running = null;
        reject(new Error('the backup was not tried out to the end'));
      });
      worker.unref();
    });
  }

  const first = setTimeout(() => void look(), FIRST_LOOK_MS);
  const timer = setInterval(() => void look(), LOOK_EVERY_MS);
  first.unref();
  timer.unref();
  return {
    look,
    last,
    stop: () => {
      isStopped = true;
      clearTimeout(first);
      clearInterval(timer);
      void running?.terminate();
    },
  };
}
