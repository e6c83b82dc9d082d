/**
 * Kills the core at random moments of a run: nothing that showed as saved is lost, the store is whole, the same step opens.
 * LIGHTOFF_KILLS sets how many (npm run faults: 200); a short form runs with the tests.
 */
import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storePath } from '../../db/openStore.ts';
import { type Office, PIN, setUpOffice } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../support/wholeJob.ts';

const KILLS = Number(process.env['LIGHTOFF_KILLS'] ?? 5);

describe('killing the core', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  beforeAll(async () => {
    test = openTestCore(new Date().toISOString());
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
    await test.must('visits.openStep', { visitId: run.visitId, runId: run.runId, stepKey: 'fill' });
    test.core.close();
  });
  afterAll(() => rmSync(test.folder, { recursive: true, force: true }));

  it(`loses nothing that was answered, in ${KILLS} kills`, async () => {
    let saved = 0;
    for (let round = 0; round < KILLS; round += 1) {
      const answered = await writeUntilKilled(round);
      saved += answered.length;
      const raw = new Database(storePath(test.folder));
      expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
      expect(raw.pragma('foreign_key_check')).toEqual([]);
      const find = raw.prepare('SELECT typed_text AS typedText FROM readings WHERE id = ?');
      for (const { readingId, typedText } of answered) expect(find.get(readingId)).toEqual({ typedText });
      // A reading and its operation row are there together or not at all; and one reading stands, never two or none.
      expect(
        raw
          .prepare("SELECT count(*) FROM readings WHERE id NOT IN (SELECT entity_id FROM op WHERE entity = 'readings')")
          .pluck()
          .get(),
      ).toBe(0);
      expect(
        raw
          .prepare("SELECT count(*) FROM readings WHERE item_key = 'cold-pressure' AND superseded_by_id IS NULL")
          .pluck()
          .get(),
      ).toBeLessThanOrEqual(1);
      expect(raw.prepare('SELECT current_step_key FROM runs').pluck().get()).toBe('fill');
      raw.close();
    }
    expect(saved).toBeGreaterThan(KILLS);
    process.stdout.write(`${KILLS} kills, ${saved} readings answered, none lost\n`);
  }, 1_800_000);

  /** Lets it answer a few, then kills it in the middle of whatever it is doing. */
  function writeUntilKilled(
    round: number,
  ): Promise<readonly { readonly readingId: string; readonly typedText: string }[]> {
    return new Promise((resolve, reject) => {
      const child = spawn(
        'node',
        [
          join(APP_ROOT, 'tests/faults/writerProcess.ts'),
          test.folder,
          APP_ROOT,
          office.technicianId,
          PIN,
          run.visitId,
          run.runId,
        ],
        { stdio: ['ignore', 'pipe', 'pipe'] },
      );
      let output = '';
      let complaint = '';
      child.stderr.on('data', (bytes: Buffer) => {
        complaint += bytes.toString();
      });
      child.stdout.on('data', (bytes: Buffer) => {
        const wasReady = output.includes('saved');
        output += bytes.toString();
        if (!wasReady && output.includes('saved')) setTimeout(() => child.kill('SIGKILL'), 5 + ((round * 37) % 180));
      });
      child.on('exit', (code) => {
        if (code !== null) reject(new Error(`the writer ended by itself: ${complaint}`));
        // The last line may be cut: only whole ones were answered.
        const lines = output
          .split('\n')
          .slice(0, -1)
          .filter((line) => line.startsWith('saved '));
        resolve(lines.map((line) => ({ readingId: line.split(' ')[1] ?? '', typedText: line.split(' ')[2] ?? '' })));
      });
    });
  }
});
