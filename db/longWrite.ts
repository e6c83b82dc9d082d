/**
 * A write that takes seconds: one transaction on a connection of its own, done a piece at a time. Until it is kept, everybody
 * else reads the store as it was; a kill at any moment leaves it as it was. Nobody else can write meanwhile.
 */
import Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { refreshStaleDuesInSteps } from './dues/refreshDues.ts';
import { watchDues } from './dues/watchDues.ts';
import { dropSearchCaches, fillSearchCaches, isFindsWorthRefilling } from './finds/searchCaches.ts';
import type { ReadableDb, WriteContext } from './openStore.ts';
import * as schema from './schema/index.ts';
import { setPragmas } from './setPragmas.ts';
import { StoreWriter } from './storeWriter.ts';

export type LongWrite = {
  readonly raw: Database.Database;
  readonly db: ReadableDb;
  readonly writer: StoreWriter;
  /** Brings the caches up to what was written; `keep` may follow when it is through. */
  readonly settle: () => Generator<{ readonly doing: 'finds' | 'dues'; readonly done: number; readonly of: number }>;
  readonly keep: () => void;
  /** Nothing of it was ever there. Does no harm after `keep`. */
  readonly drop: () => void;
};

export type LongWriteOptions = {
  /** Customers and appliances it adds or takes away: for many, the search is filled anew at the end and not row by row. */
  readonly foundRows: number;
  /**
   * Deleting looks into every table that might still point at the row, several without an index for it. Whoever has looked
   * at all of them already inside this write may leave that out.
   */
  readonly isPointersChecked?: boolean;
};

export function openLongWrite(path: string, by: WriteContext, options: LongWriteOptions): LongWrite {
  const raw = new Database(path);
  try {
    setPragmas(raw);
    // Cannot be changed inside a transaction.
    if (options.isPointersChecked === true) raw.pragma('foreign_keys = OFF');
    // Each row that a trigger follows would otherwise go through a file of its own.
    raw.pragma('temp_store = MEMORY');
    raw.pragma('cache_size = -65536');
    watchDues(raw);
    raw.exec('BEGIN IMMEDIATE');
    const isRefilled = isFindsWorthRefilling(raw, options.foundRows);
    if (isRefilled) dropSearchCaches(raw);
    const db = drizzle({ client: raw, schema });
    const writer = new StoreWriter(raw, db, by);
    return {
      raw,
      db,
      writer,
      *settle() {
        writer.finish();
        if (isRefilled) for (const step of fillSearchCaches(raw)) yield { doing: 'finds', ...step };
        for (const step of refreshStaleDuesInSteps(raw, by.now)) yield { doing: 'dues', ...step };
      },
      keep() {
        raw.exec('COMMIT');
        raw.close();
      },
      // Closing rolls back what was not committed.
      drop: () => void raw.close(),
    };
  } catch (error) {
    raw.close();
    throw error;
  }
}
