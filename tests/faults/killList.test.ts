/**
 * Kills the core while it takes a long list in and out: the next start has all of the list or nothing of it, whichever was
 * said, and says when it was cut off. LIGHTOFF_LIST_KILLS sets how many of each (npm run faults: 20).
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storePath } from '../../db/openStore.ts';
import type { InputOf, OperationName, OutputOf } from '../../electron/contract/index.ts';
import { createCore } from '../../electron/createCore.ts';
import { randomFrom } from '../catchRate/random.ts';
import { longList } from '../support/longList.ts';
import { type Office, PIN, setUpOffice } from '../support/officeScenario.ts';
import { takeIn } from '../support/takeList.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';
import { killedProcess } from './killedProcess.ts';

const KILLS = Number(process.env['LIGHTOFF_LIST_KILLS'] ?? 2);
const asked = process.env['LIGHTOFF_SEED'] ?? '20261201';
const SEED = asked === 'new' ? Date.now() : Number(asked);
const ROWS = 2000;

describe('killing the core with a list half in or half out', () => {
  let test: TestCore;
  let office: Office;
  let attachmentId: string;
  let importId: string;
  const place = mkdtempSync(join(tmpdir(), 'lightoff-kill-list-'));
  const without = join(place, 'without');
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    const bytes = new TextEncoder().encode(longList(ROWS));
    const file = { bytes, mediaType: 'text/csv', fileName: 'long.csv', takenAt: null };
    const reply = await test.core.putFile(file, 'test-window');
    if (!reply.ok) throw new Error(reply.code);
    ({ attachmentId } = reply);
    test.restart();
    cpSync(test.folder, without, { recursive: true });
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const { mapping } = await test.must('imports.check', { attachmentId });
    ({ importId } = await takeIn(test, { attachmentId, mapping }));
    test.core.close();
  });
  afterAll(() => {
    for (const folder of [test.folder, place]) rmSync(folder, { recursive: true, force: true });
  });

  it.each(['in', 'out'] as const)(
    `has all of it or nothing, going %s, in ${KILLS} kills with seed ${SEED}`,
    async (what) => {
      const { between } = randomFrom(SEED);
      const process = join(APP_ROOT, 'tests/faults/listProcess.ts');
      for (let kill = 0; kill < KILLS; kill += 1) {
        const folder = join(place, `${what}-${kill}`);
        cpSync(what === 'in' ? without : test.folder, folder, { recursive: true });
        const id = what === 'in' ? attachmentId : importId;
        const lines = await killedProcess({
          args: [process, folder, APP_ROOT, office.ownerId, PIN, what, id],
          from: 'begun',
          afterMs: between(0, 1500),
        });
        const core = createCore({ dataFolder: folder, appRoot: APP_ROOT });
        const must = async <N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> => {
          const reply = await core.call(name, input, 'after');
          if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.error)}`);
          return reply.value as never;
        };
        await must('session.signIn', { staffId: office.ownerId, pin: PIN });
        const works = await must('imports.listWorks', {});
        const inForce = (await must('imports.list', {})).filter(({ undoneAt }) => undoneAt === null);
        // What was said is so; what was not said may have been kept just before the kill.
        if (lines.includes('through')) expect(works).toEqual([]);
        expect(works.map(({ kind, isGoing }) => [kind, isGoing])).toEqual(
          works.length === 0 ? [] : [[what === 'in' ? 'take-in' : 'take-out', false]],
        );
        const isThere = (what === 'in') === (works.length === 0);
        expect(inForce).toHaveLength(isThere ? 1 : 0);
        core.close();
        expectAllOrNothing(folder, what, isThere);
        rmSync(folder, { recursive: true, force: true });
      }
    },
    600_000,
  );
});

/** The office's own customer and appliance stand beside the list's. */
function expectAllOrNothing(folder: string, what: 'in' | 'out', isThere: boolean): void {
  const raw = new Database(storePath(folder));
  try {
    expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(raw.pragma('foreign_key_check')).toEqual([]);
    const count = (table: string) => raw.prepare(`SELECT count(*) FROM ${table}`).pluck().get();
    const listed = isThere ? ROWS : 0;
    for (const table of ['parties', 'customers', 'sites', 'appliances', 'customer_finds', 'appliance_finds'])
      expect([table, count(table)]).toEqual([table, listed + 1]);
    for (const table of ['jobs', 'visits', 'visit_jobs']) expect([table, count(table)]).toEqual([table, listed]);
    // What was put in is in the log with it; what went out stays in it.
    expect(raw.prepare("SELECT count(*) FROM op WHERE entity = 'parties' AND kind = 'insert'").pluck().get()).toBe(
      what === 'in' ? listed + 1 : ROWS + 1,
    );
  } finally {
    raw.close();
  }
}
