import { cpSync, existsSync, openSync, readdirSync, readFileSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openBackupFolder } from '../../db/backups.ts';
import { rehearseRestore } from '../../db/rehearseRestore.ts';
import { hasIntactChains } from '../../electron/operations/sealChains.ts';
import { keepWeeklyRehearsal } from '../../electron/weeklyRehearsal.ts';
import { type Office, PIN, setUpOffice } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';
import { threadFile } from '../support/threads.ts';

const MIGRATIONS = join(APP_ROOT, 'db/migrations');
const DAY_S = 86_400;

describe('a backup tried out once a week', () => {
  let test: TestCore;
  let office: Office;
  let copyName: string;
  const copiesFolder = () => join(test.folder, 'copies');
  const copies = () => openBackupFolder(copiesFolder(), MIGRATIONS, hasIntactChains);
  const keep = (
    logFault = (error: unknown): void => {
      throw error;
    },
  ) =>
    keepWeeklyRehearsal({
      backups: copies(),
      migrationsFolder: MIGRATIONS,
      workerUrl: threadFile('rehearsalWorker'),
      isWanted: () => true,
      clock: test.now,
      logFault,
      changed: () => undefined,
    });
  /** As a disk that forgets: bytes in the middle of the file are others. */
  const damage = (name: string) => {
    const path = join(copiesFolder(), name);
    const file = openSync(path, 'r+');
    for (let at = 8192; at < readFileSync(path).length; at += 4096)
      writeSync(file, Buffer.alloc(512, 0xa5), 0, 512, at);
  };
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    copyName = (await test.must('backups.make', {})).name;
  });
  afterEach(() => test.remove());

  it('goes back to one of an earlier day, finds its records again, and leaves nothing lying about', async () => {
    const rehearsal = keep();
    await rehearsal.look();
    // One of today was opened and checked when it was made.
    expect(rehearsal.last()).toBeNull();
    test.wait(DAY_S);
    const before = readdirSync(copiesFolder());
    await rehearsal.look();
    expect(rehearsal.last()).toMatchObject({ at: test.now(), copyName, problem: null });
    expect(rehearsal.last()?.rowCount).toBeGreaterThan(30);
    expect(readdirSync(copiesFolder()).sort()).toEqual([...before, 'tried-out.json'].sort());
    const listed = await test.must('backups.list', {});
    expect(listed.lastTriedOut).toEqual(rehearsal.last());
    rehearsal.stop();
  });

  it('does so once a week, however often is looked and however often the program is started', async () => {
    test.wait(DAY_S);
    await keep().look();
    const first = keep().last();
    for (const days of [1, 5]) {
      test.wait(days * DAY_S);
      await keep().look();
      expect(keep().last()).toEqual(first);
    }
    test.wait(DAY_S);
    await keep().look();
    expect(keep().last()?.at).toBe(test.now());
  });

  it('says of one that was damaged since that it cannot be gone back to, until a whole one was tried out', async () => {
    test.wait(DAY_S);
    damage(copyName);
    await keep().look();
    expect(keep().last()).toMatchObject({ copyName, problem: 'integrity', rowCount: 0 });
    expect((await test.must('app.status', {})).warnings).toContain('backup-does-not-hold');
    const { name } = await test.must('backups.make', {});
    await keep().look();
    expect(keep().last()).toMatchObject({ copyName: name, problem: null });
    expect((await test.must('app.status', {})).warnings).not.toContain('backup-does-not-hold');
  });

  it('cut off by the end of the program is no fault, and tries again the next time', async () => {
    test.wait(DAY_S);
    const faults: unknown[] = [];
    const rehearsal = keep((error) => faults.push(error));
    const looking = rehearsal.look();
    rehearsal.stop();
    await looking;
    expect(faults).toEqual([]);
    expect(rehearsal.last()).toBeNull();
    await keep().look();
    expect(keep().last()).toMatchObject({ copyName, problem: null });
  });

  it('notices records that are gone after going back', () => {
    const migrationsFolder = join(test.folder, 'other-migrations');
    cpSync(MIGRATIONS, migrationsFolder, { recursive: true });
    writeFileSync(join(migrationsFolder, '9999_loses.sql'), "DELETE FROM staff_roles WHERE role = 'technician';");
    const scratchFolder = join(test.folder, 'scratch');
    const now = test.now();
    expect(rehearseRestore(copies(), copyName, { scratchFolder, migrationsFolder, now }).problem).toBe('rows-missing');
    writeFileSync(join(migrationsFolder, '9999_loses.sql'), 'DROP TABLE nobody_knows;');
    expect(rehearseRestore(copies(), copyName, { scratchFolder, migrationsFolder, now }).problem).toBe('cannot-open');
    expect(existsSync(scratchFolder)).toBe(false);
    rmSync(migrationsFolder, { recursive: true });
  });
});
