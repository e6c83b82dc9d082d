/**
 * A backup tried out: gone back to beside the store, as a real return would, opened by this program, and its rows counted. What
 * has never been gone back to is a hope and no backup.
 */
import { mkdirSync, rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { getTableName } from 'drizzle-orm';
import type { BackupFolder, CopyProblem } from './backups.ts';
import { openStore, storePath } from './openStore.ts';
import { restoreStaged, stageRestore } from './restore.ts';
import { applianceDues, derivedTables, registrationGaps } from './schema/index.ts';

export type RehearsalProblem = CopyProblem | 'cannot-open' | 'rows-missing';

export type Rehearsed = {
  readonly problem: RehearsalProblem | null;
  /** Rows found again, those of tables that are worked out anew apart. */
  readonly rowCount: number;
};

/** Worked out from the others at any opening. */
const DERIVED: ReadonlySet<string> = new Set([applianceDues, registrationGaps, derivedTables].map(getTableName));

/** `scratchFolder` is emptied first and gone afterwards. Throws where nothing can be written there: that says nothing of the copy. */
export function rehearseRestore(
  backups: BackupFolder,
  name: string,
  where: { readonly scratchFolder: string; readonly migrationsFolder: string; readonly now: string },
): Rehearsed {
  const { scratchFolder, migrationsFolder, now } = where;
  const path = storePath(scratchFolder);
  rmSync(scratchFolder, { recursive: true, force: true });
  mkdirSync(scratchFolder, { recursive: true });
  try {
    const problem = backups.problemOf(name);
    if (problem !== null) return { problem, rowCount: 0 };
    stageRestore(backups.pathOf(name), path, now);
    restoreStaged(path);
    const found = countRowsOfStore(path, migrationsFolder, now);
    if (found === null) return { problem: 'cannot-open', rowCount: 0 };
    const expected = countRowsOfCopy(backups.pathOf(name));
    const isWhole = [...expected].every(([table, count]) => (found.get(table) ?? 0) >= count);
    const rowCount = [...found.values()].reduce((sum, count) => sum + count, 0);
    return { problem: isWhole ? null : 'rows-missing', rowCount };
  } finally {
    rmSync(scratchFolder, { recursive: true, force: true });
  }
}

/** null: this program cannot open it, and the reason is not the place. */
function countRowsOfStore(path: string, migrationsFolder: string, now: string): ReadonlyMap<string, number> | null {
  try {
    const store = openStore({ path, purpose: 'real', migrationsFolder, now });
    try {
      return countRows(store.raw);
    } finally {
      store.close();
    }
  } catch (error) {
    if (error instanceof Database.SqliteError && /^SQLITE_(FULL|IOERR|CANTOPEN)/.test(error.code)) throw error;
    return null;
  }
}

function countRowsOfCopy(path: string): ReadonlyMap<string, number> {
  const raw = new Database(path, { readonly: true });
  try {
    return countRows(raw);
  } finally {
    raw.close();
  }
}

function countRows(raw: Database.Database): ReadonlyMap<string, number> {
  const tables = raw
    .prepare("SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all() as string[];
  return new Map(
    tables
      .filter((table) => !DERIVED.has(table))
      .map((table) => [table, raw.prepare(`SELECT count(*) FROM "${table}"`).pluck().get() as number]),
  );
}
