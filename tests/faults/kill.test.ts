/**
 * Kills the core at random moments of a run: nothing that showed as saved is lost, the store is whole, the same step opens,
 * and a wait that was running has its start to the millisecond. LIGHTOFF_KILLS sets how many (npm run faults: 200).
 */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Office, PIN, setUpOffice } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../support/wholeJob.ts';
import { killedProcess } from './killedProcess.ts';
import { answeredReadings, expectWholeStore } from './storeAfterFault.ts';

const KILLS = Number(process.env['LIGHTOFF_KILLS'] ?? 4);

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
    const holds = new Set<string>();
    for (let round = 0; round < KILLS; round += 1) {
      const { visitId, runId } = run;
      const writer = join(APP_ROOT, 'tests/faults/writerProcess.ts');
      const lines = await killedProcess({
        args: [writer, test.folder, APP_ROOT, office.technicianId, PIN, visitId, runId],
        from: 'saved ',
        afterMs: 5 + ((round * 37) % 180),
      });
      const answered = answeredReadings(lines);
      saved += answered.length;
      expectWholeStore(test.folder, answered);
      for (const line of lines) if (line.startsWith('hold ')) holds.add(line);
    }
    expect(saved).toBeGreaterThan(KILLS);
    // Begun by the first of them, and found by all the others as it was begun.
    expect(holds.size).toBe(1);
    process.stdout.write(`${KILLS} kills, ${saved} readings answered, none lost, the wait as it was begun\n`);
  }, 1_800_000);
});
