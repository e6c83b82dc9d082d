/** Opens the one SQLite file of this machine, durable and checked, and brings it to the newest schema. */
import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { ensureDues, refreshStaleDues } from './dues/refreshDues.ts';
import { watchDues } from './dues/watchDues.ts';
import { dropSearchCaches, ensureSearchCaches } from './finds/searchCaches.ts';
import { type LongWrite, type LongWriteOptions, openLongWrite } from './longWrite.ts';
import { migrate, pendingMigrations, readMigrations } from './migrate.ts';
import { newId } from './newId.ts';
import * as schema from './schema/index.ts';
import { setPragmas } from './setPragmas.ts';
import { StoreTaken } from './storeTaken.ts';
import { StoreDamaged } from './storeTrouble.ts';
import { StoreWriter } from './storeWriter.ts';

type Drizzle = ReturnType<typeof drizzle<typeof schema>>;

/** Reading and writing are different types: a report cannot write by accident. */
export type ReadableDb = Pick<Drizzle, 'select' | 'selectDistinct'>;

export type Store = {
  readonly path: string;
  readonly raw: Database.Database;
  readonly db: ReadableDb;
  /** One user action: everything written in it and its change-log rows are there together or not at all. */
  readonly write: <T>(by: WriteContext, action: (writer: StoreWriter) => T) => T;
  /** For what takes seconds; until it ends, whatever else wants to write meets `StoreTaken`. One at a time. */
  readonly beginLong: (by: WriteContext, options: LongWriteOptions) => LongWrite;
  /** Throws `StoreTaken` while a long write has the store: for what writes past `write`. */
  readonly requireFree: () => void;
  readonly isFree: () => boolean;
  readonly close: () => void;
};

export type WriteContext = { readonly actorId: string | null; readonly now: string };

export type OpenOptions = {
  readonly path: string;
  readonly purpose: 'real' | 'demo';
  readonly migrationsFolder: string;
  readonly now: string;
  /** Called with the closed-over raw handle before an existing store is migrated: makes the backup. */
  readonly beforeMigration?: (raw: Database.Database) => void;
};

export function openStore(options: OpenOptions): Store {
  if (options.path !== ':memory:') mkdirSync(dirname(options.path), { recursive: true });
  const isExisting = options.path !== ':memory:' && existsSync(options.path);
  const raw = new Database(options.path);
  try {
    setPragmas(raw);
    // The demo can be made anew: it is not worth the second that reading all of it takes.
    const isChecked = isExisting && options.purpose === 'real';
    if (isChecked && raw.pragma('quick_check', { simple: true }) !== 'ok') throw new StoreDamaged();
    const pending = pendingMigrations(raw, readMigrations(options.migrationsFolder));
    if (isExisting && pending.length > 0) options.beforeMigration?.(raw);
    if (pending.length > 0) dropSearchCaches(raw);
    migrate(raw, pending, options.now);
    ensureSearchCaches(raw);
    ensureDevice(raw, options);
    watchDues(raw);
    ensureDues(raw, options.now);
  } catch (error) {
    raw.close();
    throw error;
  }
  const db = drizzle({ client: raw, schema });
  // Made once: on the way of every saved field, a new wrapper costs as much as a statement.
  const transact = raw.transaction((by: WriteContext, action: (writer: StoreWriter) => unknown) => {
    const writer = new StoreWriter(raw, db, by);
    const value = action(writer);
    writer.finish();
    refreshStaleDues(raw, by.now);
    return value;
  }).immediate;
  let freed: Promise<void> | null = null;
  const requireFree = (): void => {
    if (freed !== null) throw new StoreTaken(freed);
  };
  return {
    path: options.path,
    raw,
    db,
    write: <T>(by: WriteContext, action: (writer: StoreWriter) => T): T => {
      requireFree();
      return transact(by, action) as T;
    },
    beginLong(by, longOptions) {
      requireFree();
      const long = openLongWrite(options.path, by, longOptions);
      const ended = Promise.withResolvers<void>();
      freed = ended.promise;
      const free = (): void => {
        if (freed === ended.promise) freed = null;
        ended.resolve();
      };
      return { ...long, keep: () => endWith(long.keep, free), drop: () => endWith(long.drop, free) };
    },
    requireFree,
    isFree: () => freed === null,
    close: () => raw.close(),
  };
}

/** Also when it fails: the store must not stay taken. */
function endWith(end: () => void, free: () => void): void {
  try {
    end();
  } finally {
    free();
  }
}

export function storePath(folder: string): string {
  return join(folder, 'lightoff.db');
}

function ensureDevice(raw: Database.Database, options: OpenOptions): void {
  const nowMs = Date.parse(options.now);
  const row = raw.prepare('SELECT purpose FROM device').get() as { purpose: string } | undefined;
  if (row === undefined) {
    raw
      .prepare(
        "INSERT INTO device (id, device_id, incarnation, next_seq, last_hlc, created_at, purpose) VALUES ('this', ?, ?, 1, '', ?, ?)",
      )
      .run(newId(nowMs), newId(nowMs), options.now, options.purpose);
  } else if (row.purpose !== options.purpose) {
    throw new Error(`this is a ${row.purpose} store, not a ${options.purpose} one`);
  }
}
