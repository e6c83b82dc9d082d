/** Why a store cannot be opened where going back to a copy helps; everything else is a fault of the place or the program. */
import Database from 'better-sqlite3';
import { CopyNotWhole } from './backups.ts';
import { MigrationRefused } from './migrate.ts';

export type StoreTrouble = 'damaged' | 'missing';

export class StoreDamaged extends Error {
  constructor() {
    super('the store is damaged');
    this.name = 'StoreDamaged';
  }
}

/** There is no store where copies of one are: it was moved or deleted, and an empty one in its place would hide that. */
export class StoreMissing extends Error {
  constructor() {
    super('the store is missing, its copies are there');
    this.name = 'StoreMissing';
  }
}

export function storeTroubleOf(error: unknown): StoreTrouble | null {
  if (error instanceof StoreMissing) return 'missing';
  if (error instanceof StoreDamaged) return 'damaged';
  // Before an update the store is copied, and not updated when that shows it is not whole.
  if (error instanceof CopyNotWhole && error.problem !== 'newer-program') return 'damaged';
  if (error instanceof MigrationRefused) return error.code === 'foreign-keys' ? 'damaged' : null;
  if (!(error instanceof Database.SqliteError)) return null;
  return error.code.startsWith('SQLITE_CORRUPT') || error.code === 'SQLITE_NOTADB' ? 'damaged' : null;
}
