/** A real core on a real store in a temporary folder, with a clock the test turns. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { storePath } from '../../db/openStore.ts';
import type { InputOf, OperationName, OutputOf, ReplyOf } from '../../electron/contract/index.ts';
import type { Core } from '../../electron/core.ts';
import { createCore } from '../../electron/createCore.ts';
import { threadsFolder } from './threads.ts';

export const APP_ROOT = new URL('../..', import.meta.url).pathname;

export type TestCore = {
  readonly core: Core;
  readonly folder: string;
  /** The reply, whatever it is. */
  readonly ask: <N extends OperationName>(name: N, input: InputOf<N>) => Promise<ReplyOf<N>>;
  /** The value; a failure fails the test with its code and data. */
  readonly must: <N extends OperationName>(name: N, input: InputOf<N>) => Promise<OutputOf<N>>;
  readonly now: () => string;
  readonly wait: (seconds: number) => void;
  /** Moves the wall clock alone, as somebody setting it would. */
  readonly setClockAhead: (seconds: number) => void;
  /** Closes the store and opens it again, as after a kill: everybody must sign in again. */
  readonly restart: () => void;
  /** Every row of every table but the caches: equal before and after means that nothing was written. */
  readonly snapshot: () => string;
  readonly remove: () => void;
};

export function openTestCore(startAt = '2026-03-02T13:00:00.000Z', clientId = 'test-window'): TestCore {
  const folder = mkdtempSync(join(tmpdir(), 'lightoff-'));
  let wallMs = Date.parse(startAt);
  let steadyMs = 1_000_000;
  const faults: unknown[] = [];
  const open = (): Core =>
    createCore({
      dataFolder: folder,
      appRoot: APP_ROOT,
      threadsFolder: threadsFolder(),
      clock: () => new Date(wallMs).toISOString(),
      steadyClockMs: () => steadyMs,
      logFault: (error) => String(faults.push(error)),
    });
  let core = open();
  const ask: TestCore['ask'] = async (name, input) => (await core.call(name, input, clientId)) as never;
  return {
    get core() {
      return core;
    },
    folder,
    ask,
    async must(name, input) {
      const reply = await ask(name, input);
      if (reply.ok) return reply.value as never;
      throw new Error(`${name} → ${JSON.stringify(reply.error)} ${faults.map(String).join('; ')}`, {
        cause: faults.at(-1),
      });
    },
    now: () => new Date(wallMs).toISOString(),
    wait(seconds) {
      wallMs += seconds * 1000;
      steadyMs += seconds * 1000;
    },
    setClockAhead(seconds) {
      wallMs += seconds * 1000;
    },
    restart() {
      core.close();
      core = open();
    },
    snapshot() {
      const raw = new Database(storePath(folder), { readonly: true });
      try {
        const tables = raw
          .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
          .pluck()
          .all() as string[];
        const caches = new Set(['appliance_dues', 'registration_gaps', 'derived_tables']);
        return JSON.stringify(
          tables
            .filter((table) => !caches.has(table))
            .map((table) => [table, raw.prepare(`SELECT * FROM "${table}" ORDER BY 1`).all()]),
        );
      } finally {
        raw.close();
      }
    },
    remove() {
      core.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
