/** Why the disk or the store did not take something; null: the error has another cause. */
import Database from 'better-sqlite3';

export type StorageFailure = 'disk-full' | 'read-only' | 'locked' | 'failed';

const CODES: Readonly<Record<string, StorageFailure>> = {
  SQLITE_FULL: 'disk-full',
  SQLITE_READONLY: 'read-only',
  SQLITE_BUSY: 'locked',
  SQLITE_IOERR: 'failed',
  ENOSPC: 'disk-full',
  EROFS: 'read-only',
  EACCES: 'read-only',
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
