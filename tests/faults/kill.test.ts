/**
 * Kills the core at random moments of a whole startup, from the first answer to the sealed record: nothing that was answered is
 * lost, nothing is there by halves, and the next start goes on from there. LIGHTOFF_KILLS sets how many (npm run faults: 200),
 * LIGHTOFF_SEED which moments; a seed that failed is in the name of the test.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { randomFrom } from '../catchRate/random.ts';
import { type Office, PIN, setUpOffice } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../support/wholeJob.ts';
import { answeredThings, expectAnsweredThings, LOOKED_UP } from './answeredThings.ts';
import { killedProcess } from './killedProcess.ts';

const KILLS = Number(process.env['LIGHTOFF_KILLS'] ?? 4);
const SEED = Number(process.env['LIGHTOFF_SEED'] ?? 20_261_201);

describe('killing the core', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  let startMs: number;
  const place = mkdtempSync(join(tmpdir(), 'lightoff-kill-'));
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
    startMs = Date.parse(test.now());
    test.core.close();
  });
  afterAll(() => {
    for (const folder of [test.folder, place]) rmSync(folder, { recursive: true, force: true });
  });

  it(`loses nothing that was answered in the whole of a startup, in ${KILLS} kills with seed ${SEED}`, async () => {
    const { between } = randomFrom(SEED);
    const seen = new Map<string, number>();
    let sealed = 0;
    let folder = '';
    let clockMs = startMs;
    for (let kill = 0; kill < KILLS; kill += 1) {
      if (folder === '') {
        folder = join(place, `walk-${kill}`);
        cpSync(test.folder, folder, { recursive: true });
        clockMs = startMs;
      }
      const walker = join(APP_ROOT, 'tests/faults/walkerProcess.ts');
      const lines = await killedProcess({
        args: [walker, folder, APP_ROOT, PIN, JSON.stringify(office), JSON.stringify(run), String(clockMs)],
        from: 'going',
        afterMs: between(0, 900),
      });
      const things = answeredThings(lines);
      expectAnsweredThings(folder, things);
      for (const { name } of things) seen.set(name, (seen.get(name) ?? 0) + 1);
      // Later than anything the killed one wrote.
      const last = lines.findLast((line) => line.startsWith('clock '))?.slice('clock '.length);
      clockMs = (last === undefined ? clockMs : Number(last)) + 10_000;
      if (lines.includes('sealed')) {
        sealed += 1;
        rmSync(folder, { recursive: true, force: true });
        folder = '';
      }
    }
    const total = [...seen.values()].reduce((sum, count) => sum + count, 0);
    expect(total).toBeGreaterThan(KILLS);
    // Walked through to the end, so that no kind of act was left out.
    if (KILLS >= 100) expect(LOOKED_UP.filter((name) => !seen.has(name))).toEqual([]);
    process.stdout.write(
      `${KILLS} kills (seed ${SEED}), ${total} things answered of ${seen.size} kinds, ${sealed} records sealed, none lost\n`,
    );
  }, 3_600_000);
});
