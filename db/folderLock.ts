/**
 * One program at a time per data folder: two would hand out the same operation numbers. The lock is SQLite's own on a file
 * of its own, so the system lets go of it however the program ends.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';

export class FolderInUse extends Error {
  readonly folder: string;
  constructor(folder: string) {
    super(`Another Lightoff has this data folder open: ${folder}. Close it, or start with another --data folder.`);
    this.name = 'FolderInUse';
    this.folder = folder;
  }
}

export type FolderLock = { readonly release: () => void };

/** Throws `FolderInUse` when another holds it. */
export function takeFolderLock(folder: string): FolderLock {
  mkdirSync(folder, { recursive: true });
  const lock = new Database(join(folder, 'in-use.lock'), { timeout: 0 });
  try {
    // A write lock that is never written under: nothing reaches the disk.
    lock.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    lock.close();
    if (error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY')) throw new FolderInUse(folder);
    throw error;
  }
  return { release: () => void lock.close() };
}
