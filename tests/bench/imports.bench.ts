/**
 * The longest list that is taken, 20 000 rows, in and out again through the contract, against bare prepared inserts of the very
 * rows it wrote, change log and dues with them, into a store of the same schema without its search; and how long somebody else
 * waits for an answer meanwhile.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { dropSearchCaches } from '../../db/finds/searchCaches.ts';
import { openStore, storePath } from '../../db/openStore.ts';
import { setPragmas } from '../../db/setPragmas.ts';
import { MOST_ROWS } from '../../electron/operations/imports/readTable.ts';
import { longList } from '../support/longList.ts';
import { setUpOffice } from '../support/officeScenario.ts';
import { takeIn, takeOut } from '../support/takeList.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';
import type { BenchResult } from './benchResult.ts';

export async function benchImports(): Promise<readonly BenchResult[]> {
  const test = openTestCore();
  const bareFolder = mkdtempSync(join(tmpdir(), 'lightoff-bench-'));
  try {
    await setUpOffice(test);
    const bytes = new TextEncoder().encode(longList(MOST_ROWS));
    const file = { bytes, mediaType: 'text/csv', fileName: 'long.csv', takenAt: null };
    const reply = await test.core.putFile(file, 'test-window');
    if (!reply.ok) throw new Error(reply.code);
    const { attachmentId } = reply;
    const { mapping } = await test.must('imports.check', { attachmentId });
    const asking = askMeanwhile(test);
    const startMs = performance.now();
    const { importId } = await takeIn(test, { attachmentId, mapping });
    const inMs = performance.now() - startMs;
    const bareMs = insertBare(storePath(test.folder), storePath(bareFolder), test.now());
    const outStartMs = performance.now();
    await takeOut(test, { importId });
    const outMs = performance.now() - outStartMs;
    const waits = await asking.stop();
    return [
      { name: `take in ${MOST_ROWS} rows, against bare inserts of what they make`, ms: inMs, rawMs: bareMs, goal: 5 },
      { name: `take ${MOST_ROWS} rows out again, against the same inserts`, ms: outMs, rawMs: bareMs, goal: 3 },
      { name: 'an answer to somebody else meanwhile, 95th percentile', ms: p95(waits), rawMs: null, goal: 100 },
    ];
  } finally {
    test.remove();
    rmSync(bareFolder, { recursive: true, force: true });
  }
}

/** Every row of the store, into an empty one of the same schema, in one durable transaction: the least that could be done. */
function insertBare(fromPath: string, toPath: string, now: string): number {
  openStore({ path: toPath, purpose: 'real', migrationsFolder: join(APP_ROOT, 'db/migrations'), now }).close();
  const from = new Database(fromPath, { readonly: true });
  const to = new Database(toPath);
  setPragmas(to);
  to.pragma('foreign_keys = OFF');
  dropSearchCaches(to);
  to.exec('DELETE FROM device; DELETE FROM derived_tables');
  const tables = to
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT IN ('_migration', 'sqlite_sequence')")
    .pluck()
    .all() as string[];
  const rows = tables.map((table) => {
    const read = from.prepare(`SELECT * FROM "${table}"`).raw();
    const places = read.columns().map(() => '?');
    return {
      insert: to.prepare(`INSERT INTO "${table}" VALUES (${places.join(', ')})`),
      rows: read.all() as unknown[][],
    };
  });
  const startMs = performance.now();
  to.exec('BEGIN IMMEDIATE');
  for (const table of rows) for (const row of table.rows) table.insert.run(row);
  to.exec('COMMIT');
  const ms = performance.now() - startMs;
  from.close();
  to.close();
  return ms;
}

/** As a window that is in use asks: a list every fiftieth of a second. */
function askMeanwhile(test: TestCore): { readonly stop: () => Promise<readonly number[]> } {
  const waits: number[] = [];
  let isOver = false;
  const asking = (async () => {
    while (!isOver) {
      const startMs = performance.now();
      await test.must('customers.list', { limit: 50 });
      waits.push(performance.now() - startMs);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  })();
  return {
    async stop() {
      isOver = true;
      await asking;
      return waits;
    },
  };
}

function p95(times: readonly number[]): number {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length * 0.95)] ?? Number.NaN;
}
