/**
 * Power cuts on the production store, after the way of LazyFS and SQLite's own crash tests: what was not synced is lost or
 * torn, while a run is written, while the store is migrated, while a copy is made. LIGHTOFF_CUTS sets how many of each kind
 * (npm run faults: 60 each and as many again in writing); a short form runs with the tests, on Linux with a C compiler.
 */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { migrate, pendingMigrations, readMigrations } from '../../db/migrate.ts';
import { storePath } from '../../db/openStore.ts';
import { createCore } from '../../electron/createCore.ts';
import { randomFrom } from '../catchRate/random.ts';
import { COMPANY, type Office, PIN, setUpOffice } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../support/wholeJob.ts';
import { killedProcess } from './killedProcess.ts';
import { cutPower, settleDisk } from './powerCut.ts';
import { buildPreload, underCut } from './preloads.ts';
import { answeredReadings, expectWholeStore } from './storeAfterFault.ts';

const CUTS = Number(process.env['LIGHTOFF_CUTS'] ?? 1);
const LONG_MS = 3_600_000;
const MIGRATIONS = join(APP_ROOT, 'db/migrations');
const place = mkdtempSync(join(tmpdir(), 'lightoff-cut-'));
const library = buildPreload('syncedBytes', place);
const { between } = randomFrom(20_261_125);
const random = () => between(0, 1);

describe.runIf(library !== null)('power cuts', () => {
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
  afterAll(() => {
    rmSync(test.folder, { recursive: true, force: true });
    rmSync(place, { recursive: true, force: true });
  });

  /** A folder with its synced bytes beside it, both as given. */
  function cutFolder(name: string, from: string | null) {
    const live = join(place, name);
    const kept = join(place, `${name}.kept`);
    for (const folder of [live, kept]) {
      if (from === null) mkdirSync(folder);
      else cpSync(from, folder, { recursive: true });
    }
    return { live, kept, env: underCut(library ?? '', live, kept) };
  }

  it('does lose what a careless store answered: the cut is a real one', async () => {
    const { live, kept, env } = cutFolder('careless', null);
    const path = join(live, 'careless.db');
    const lines = await killedProcess({
      args: [join(APP_ROOT, 'tests/faults/carelessProcess.ts'), path],
      env,
      from: 'saved ',
      afterMs: 60,
    });
    cutPower(live, kept, random);
    const raw = new Database(path);
    const left = Number(raw.prepare('SELECT count(*) FROM readings').pluck().get());
    raw.close();
    expect(left).toBeLessThan(lines.length);
  });

  it(
    `loses no reading that was answered, in ${2 * CUTS} cuts`,
    async () => {
      const { live, kept, env } = cutFolder('writing', test.folder);
      let saved = 0;
      for (let round = 0; round < 2 * CUTS; round += 1) {
        const lines = await killedProcess({
          args: [
            join(APP_ROOT, 'tests/faults/writerProcess.ts'),
            live,
            APP_ROOT,
            office.technicianId,
            PIN,
            run.visitId,
            run.runId,
          ],
          env,
          from: 'saved ',
          afterMs: 5 + random() * 250,
        });
        cutPower(live, kept, random);
        const answered = answeredReadings(lines);
        saved += answered.length;
        expectWholeStore(live, answered);
        settleDisk(live, kept);
      }
      expect(saved).toBeGreaterThan(2 * CUTS);
      process.stdout.write(`${2 * CUTS} power cuts in writing, ${saved} readings answered, none lost\n`);
    },
    LONG_MS,
  );

  it(
    `opens after a cut in the first opening and in a migration, in ${CUTS} of each`,
    async () => {
      const older = join(place, 'older');
      const someMigrations = join(place, 'some-migrations');
      mkdirSync(someMigrations);
      const names = readdirSync(MIGRATIONS).filter((name) => name.endsWith('.sql'));
      for (const name of names.toSorted().slice(0, 4)) cpSync(join(MIGRATIONS, name), join(someMigrations, name));
      openBefore(older, someMigrations);
      for (let round = 0; round < CUTS; round += 1) {
        for (const from of [null, older]) {
          const { live, kept, env } = cutFolder(`opening-${round}-${from === null ? 'first' : 'older'}`, from);
          const opener = join(APP_ROOT, 'tests/faults/openerProcess.ts');
          await killedProcess({ args: [opener, live, APP_ROOT], env, from: null, afterMs: 250 + random() * 900 });
          cutPower(live, kept, random);
          createCore({ dataFolder: live, appRoot: APP_ROOT }).close();
          const raw = new Database(storePath(live), { readonly: true });
          expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
          expect(raw.pragma('foreign_key_check')).toEqual([]);
          raw.close();
          for (const folder of [live, kept]) rmSync(folder, { recursive: true, force: true });
        }
      }
      process.stdout.write(`${2 * CUTS} power cuts in opening and migrating, each opened afterwards\n`);
    },
    LONG_MS,
  );

  it(
    `keeps every copy that was answered, in ${CUTS} cuts`,
    async () => {
      const { live, kept, env } = cutFolder('copying', test.folder);
      const copied = new Set<string>();
      for (let round = 0; round < CUTS; round += 1) {
        const lines = await killedProcess({
          args: [join(APP_ROOT, 'tests/faults/openerProcess.ts'), live, APP_ROOT, office.ownerId, PIN],
          env,
          from: 'copied ',
          afterMs: random() * 1500,
        });
        cutPower(live, kept, random);
        const names = lines.filter((line) => line.startsWith('copied ')).map((line) => line.slice('copied '.length));
        for (const name of names) {
          copied.add(name);
          const copy = new Database(join(live, 'copies', name), { readonly: true });
          expect(copy.pragma('integrity_check', { simple: true })).toBe('ok');
          expect(copy.prepare('SELECT count(*) FROM runs').pluck().get()).toBe(1);
          copy.close();
        }
        expectWholeStore(live, []);
        settleDisk(live, kept);
      }
      process.stdout.write(`${CUTS} power cuts while copying, ${copied.size} copies answered, all whole\n`);
    },
    LONG_MS,
  );

  it(
    `has the store as it was or the backup in its place after a cut in a return to it, in ${CUTS} cuts`,
    async () => {
      const { live, kept, env } = cutFolder('restoring', test.folder);
      const first = createCore({ dataFolder: live, appRoot: APP_ROOT });
      await first.call('session.signIn', { staffId: office.ownerId, pin: PIN }, 'cut');
      const copy = (await first.call('backups.make', {}, 'cut')) as { value: { name: string } };
      first.close();
      settleDisk(live, kept);
      const phones = { wanted: COMPANY.phone, returns: 0 };
      for (let round = 0; round < CUTS; round += 1) {
        const restorer = join(APP_ROOT, 'tests/faults/restorerProcess.ts');
        const lines = await killedProcess({
          args: [restorer, live, APP_ROOT, office.ownerId, PIN, copy.value.name],
          env,
          from: 'phone ',
          afterMs: random() * 900,
        });
        cutPower(live, kept, random);
        const core = createCore({ dataFolder: live, appRoot: APP_ROOT });
        const status = (await core.call('app.status', {}, 'cut')) as { value: { company: { phone: string } | null } };
        core.close();
        // What was said last stands, or what was begun after it.
        const said = lines.findLast((line) => line === 'back' || line.startsWith('phone '));
        const begun = lines.filter((line) => line.startsWith('phone ')).length;
        const next = said === 'back' ? `902 555 ${String(1001 + begun)}` : phones.wanted;
        const now = said === 'back' ? phones.wanted : said?.slice('phone '.length);
        expect([now, next]).toContain(status.value.company?.phone);
        phones.returns += lines.filter((line) => line === 'back').length;
        settleDisk(live, kept);
      }
      process.stdout.write(`${CUTS} power cuts in ${phones.returns} returns to a backup, none half done\n`);
    },
    LONG_MS,
  );
});

/** A store as an older program left it. */
function openBefore(folder: string, migrationsFolder: string): void {
  mkdirSync(folder);
  const raw = new Database(storePath(folder));
  raw.pragma('journal_mode = WAL');
  migrate(raw, pendingMigrations(raw, readMigrations(migrationsFolder)), new Date().toISOString());
  raw.close();
}
