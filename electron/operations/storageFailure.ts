/** Why the disk or the store did not take something; null: the error has another cause. */
import Database from 'better-sqlite3';
import type { z } from 'zod';
import type { storageFailure } from '../contract/operation.ts';

export type StorageFailure = z.output<typeof storageFailure>;

const CODES: Readonly<Record<string, StorageFailure>> = {
  SQLITE_FULL: 'disk-full',
  SQLITE_READONLY: 'read-only',
  SQLITE_BUSY: 'locked',
  SQLITE_IOERR: 'failed',
  SQLITE_CORRUPT: 'damaged',
  SQLITE_NOTADB: 'damaged',
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EIO: 'failed',
  EROFS: 'read-only',
  EACCES: 'read-only',
  EPERM: 'read-only',
};

export function storageFailureOf(error: unknown): StorageFailure | null {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return null;
  const code = error.code;
  if (error instanceof Database.SqliteError) {
    // Extended codes: SQLITE_IOERR_WRITE.
    return Object.entries(CODES).find(([known]) => code.startsWith(known))?.[1] ?? null;
  }
  return CODES[code] ?? null;
}
