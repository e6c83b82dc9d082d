/** Copies of the store: made with SQLite's own copy command, verified by reopening, so many of each kind kept. */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { Temporal } from 'temporal-polyfill';
import { syncFile, syncFolder } from './attachmentFiles.ts';
import { MigrationRefused, pendingMigrations, readMigrations } from './migrate.ts';

export type CopyKind = 'daily' | 'weekly' | 'monthly' | 'before-update' | 'before-restore';
export type CopyProblem = 'integrity' | 'foreign-keys' | 'seal-chain' | 'not-a-store' | 'newer-program';

export type BackupCopy = {
  readonly name: string;
  readonly madeAt: string;
  readonly byteLength: number;
  readonly kept: CopyKind;
};

/** A copy was made and thrown away again: what was copied is not whole. */
export class CopyNotWhole extends Error {
  readonly problem: CopyProblem;
  constructor(problem: CopyProblem) {
    super(`the copy does not verify: ${problem}`);
    this.name = 'CopyNotWhole';
    this.problem = problem;
  }
}

export type BackupFolder = {
  readonly folder: string;
  readonly list: () => readonly BackupCopy[];
  /** Throws when the copy cannot be made or does not verify; nothing half-made stays. */
  readonly make: (raw: Database.Database, kept: CopyKind, now: string) => BackupCopy;
  /** Opens the copy and checks all of it, which takes as long as the copy is big. */
  readonly problemOf: (name: string) => CopyProblem | null;
  /** The same of a file elsewhere: of a copy in another folder, or a store that was put aside. */
  readonly problemAt: (path: string) => CopyProblem | null;
  /** As it was found when this file was checked last; a file that changed since is checked again. */
  readonly lastProblemOf: (name: string) => CopyProblem | null;
  readonly pathOf: (name: string) => string;
  /** Takes away what is more than is kept of each kind. */
  readonly prune: () => void;
  readonly remove: (name: string) => void;
};

/** The chain rule lives above the store; it is handed in so that a copy is judged by the same one. */
export type ChainCheck = (raw: Database.Database) => boolean;

const NAME = /^(\d{8}T\d{6}Z)-(daily|weekly|monthly|before-update|before-restore)\.db$/;
/** How many of each kind stay; the oldest go. Of daily ones it counts days: whoever makes many on one day loses no other day's. */
const KEEP: Readonly<Record<CopyKind, number>> = {
  daily: 7,
  weekly: 4,
  monthly: 12,
  'before-update': 3,
  'before-restore': 3,
};

export function openBackupFolder(folder: string, migrationsFolder: string, hasIntactChain: ChainCheck): BackupFolder {
  const pathOf = (name: string): string => {
    if (!NAME.test(name)) throw new Error(`not the name of a copy: ${name}`);
    return join(folder, name);
  };
  const list = (): readonly BackupCopy[] => namesIn(folder).flatMap(toCopy(folder)).sort(byNewest);
  const checked = new Map<string, CopyProblem | null>();
  const problemOf = (name: string): CopyProblem | null => {
    if (!existsSync(pathOf(name))) return 'not-a-store';
    const problem = findProblem(pathOf(name), migrationsFolder, hasIntactChain);
    checked.set(fileState(pathOf(name)), problem);
    return problem;
  };
  return {
    folder,
    list,
    pathOf,
    remove: (name) => rmSync(pathOf(name), { force: true }),
    problemOf,
    prune: () => prune(folder, list()),
    problemAt: (path) => findProblem(path, migrationsFolder, hasIntactChain),
    lastProblemOf(name) {
      const known = existsSync(pathOf(name)) ? checked.get(fileState(pathOf(name))) : 'not-a-store';
      return known === undefined ? problemOf(name) : known;
    },
    make(raw, kept, now) {
      mkdirSync(folder, { recursive: true });
      const name = `${now.replaceAll(/[-:]|\.\d+/g, '')}-${kept}.db`;
      const aside = join(folder, `${name}.part`);
      removeHalfMade(folder);
      try {
        raw.prepare('VACUUM INTO ?').run(aside);
        const problem = findProblem(aside, migrationsFolder, hasIntactChain);
        if (problem !== null) throw new CopyNotWhole(problem);
        syncFile(aside);
      } catch (error) {
        removeHalfMade(folder);
        throw error;
      }
      renameSync(aside, join(folder, name));
      syncFolder(folder);
      checked.set(fileState(pathOf(name)), null);
      prune(folder, list());
      return { name, madeAt: now, byteLength: statSync(join(folder, name)).size, kept };
    },
  };
}

/** The first copy of a month is kept as monthly, the first of an ISO week as weekly, otherwise daily. */
export function kindForToday(copies: readonly BackupCopy[], now: string): CopyKind {
  const month = now.slice(0, 7);
  if (!copies.some((copy) => copy.kept === 'monthly' && copy.madeAt.startsWith(month))) return 'monthly';
  const week = isoWeek(now);
  return copies.some((copy) => copy.kept === 'weekly' && isoWeek(copy.madeAt) === week) ? 'daily' : 'weekly';
}

function findProblem(path: string, migrationsFolder: string, hasIntactChain: ChainCheck): CopyProblem | null {
  let raw: Database.Database;
  // What lay beside it before belongs to it; only what the check leaves behind goes.
  const leftBehind = ['-wal', '-shm', '-journal'].filter((suffix) => !existsSync(`${path}${suffix}`));
  try {
    raw = new Database(path, { fileMustExist: true });
  } catch {
    return 'not-a-store';
  }
  try {
    if (raw.pragma('integrity_check', { simple: true }) !== 'ok') return 'integrity';
    if ((raw.pragma('foreign_key_check') as unknown[]).length > 0) return 'foreign-keys';
    if (raw.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'device'").get() === undefined) return 'not-a-store';
    if (pendingMigrations(raw, readMigrations(migrationsFolder)).length === 0 && !hasIntactChain(raw))
      return 'seal-chain';
    return null;
  } catch (error) {
    if (error instanceof MigrationRefused) return 'newer-program';
    return error instanceof Database.SqliteError && error.code === 'SQLITE_NOTADB' ? 'not-a-store' : 'integrity';
  } finally {
    raw.close();
    for (const suffix of leftBehind) rmSync(`${path}${suffix}`, { force: true });
  }
}

/** What a full disk, a kill or a power cut left of a copy: its file and the journals beside it. */
function removeHalfMade(folder: string): void {
  for (const name of namesIn(folder))
    if (/\.db\.part(-journal|-wal|-shm)?$/.test(name)) rmSync(join(folder, name), { force: true });
}

/** A folder that cannot be read holds nothing that could be used; why not is said when the next copy is made. */
function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function toCopy(folder: string): (fileName: string) => readonly BackupCopy[] {
  return (fileName) => {
    const match = NAME.exec(fileName);
    if (match?.[1] === undefined || match[2] === undefined) return [];
    const stamp = match[1];
    const madeAt = `${stamp.slice(0, 4)}-${stamp.slice(4, 6)}-${stamp.slice(6, 8)}T${stamp.slice(9, 11)}:${stamp.slice(11, 13)}:${stamp.slice(13, 15)}Z`;
    return [
      {
        name: fileName,
        madeAt,
        byteLength: statSync(join(folder, fileName)).size,
        kept: match[2] as CopyKind,
      },
    ];
  };
}

function fileState(path: string): string {
  const { size, mtimeMs, ino } = statSync(path);
  return `${path} ${size} ${mtimeMs} ${ino}`;
}

function byNewest(a: BackupCopy, b: BackupCopy): number {
  return b.name.localeCompare(a.name);
}

function prune(folder: string, copies: readonly BackupCopy[]): void {
  for (const [kept, count] of Object.entries(KEEP)) {
    const ofKind = copies.filter((copy) => copy.kept === kept);
    const surplus = kept === 'daily' ? surplusOfDays(ofKind, count) : ofKind.slice(count);
    for (const old of surplus) rmSync(join(folder, old.name), { force: true });
  }
}

/** Of each day the newest stays, of all days the three newest too. */
function surplusOfDays(copies: readonly BackupCopy[], days: number): readonly BackupCopy[] {
  const kept = new Set<string>();
  return copies.filter(({ madeAt }, index) => {
    const day = madeAt.slice(0, 10);
    const isNewestOfDay = !kept.has(day);
    kept.add(day);
    return kept.size > days || (!isNewestOfDay && index >= 3);
  });
}

function isoWeek(instant: string): string {
  const date = Temporal.PlainDate.from(instant.slice(0, 10));
  return `${date.yearOfWeek}-${date.weekOfYear}`;
}
