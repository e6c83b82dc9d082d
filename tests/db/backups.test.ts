import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { kindForToday, openBackupFolder } from '../../db/backups.ts';
import { openStore, type Store, storePath } from '../../db/openStore.ts';
import { hasIntactChains } from '../../electron/operations/sealChains.ts';
import { PIN, setUpFirm, setUpOffice } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore } from '../support/testCore.ts';
import { bookAndBegin, readStartupNotes, walkRun } from '../support/wholeJob.ts';

const MIGRATIONS = join(APP_ROOT, 'db/migrations');

describe('copies of the store', () => {
  let folder: string;
  let store: Store;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'lightoff-copies-'));
    store = openStore({
      path: storePath(folder),
      purpose: 'real',
      migrationsFolder: MIGRATIONS,
      now: '2026-01-01T08:00:00.000Z',
    });
  });
  afterEach(() => {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('keeps 7 daily, 4 weekly and 12 monthly over two years', () => {
    const copies = openBackupFolder(join(folder, 'copies'), MIGRATIONS, hasIntactChains);
    for (let day = 0; day < 730; day += 3) {
      const now = new Date(Date.UTC(2026, 0, 1 + day, 8)).toISOString();
      copies.make(store.raw, kindForToday(copies.list(), now), now);
    }
    const kinds = Map.groupBy(copies.list(), (copy) => copy.kept);
    expect([...kinds].map(([kind, list]) => [kind, list.length]).sort()).toEqual([
      ['daily', 7],
      ['monthly', 12],
      ['weekly', 4],
    ]);
    expect(readdirSync(join(folder, 'copies')).filter((name) => name.endsWith('.part'))).toEqual([]);
    // 244 copies, each opened again and looked through: a busy computer is minutes at it.
  }, 180_000);

  it('loses no other day by making many on one day', () => {
    const copies = openBackupFolder(join(folder, 'copies'), MIGRATIONS, hasIntactChains);
    for (let day = 5; day < 8; day += 1) copies.make(store.raw, 'daily', `2026-01-0${day}T08:00:00.000Z`);
    for (let minute = 10; minute < 22; minute += 1) copies.make(store.raw, 'daily', `2026-01-08T09:${minute}:00.000Z`);
    expect(copies.list().map(({ madeAt }) => madeAt.slice(5, 16))).toEqual([
      '01-08T09:21',
      '01-08T09:20',
      '01-08T09:19',
      '01-07T08:00',
      '01-06T08:00',
      '01-05T08:00',
    ]);
  });

  it('notices a copy that was cut short, altered or is something else', () => {
    const copies = openBackupFolder(join(folder, 'copies'), MIGRATIONS, hasIntactChains);
    const { name } = copies.make(store.raw, 'daily', '2026-01-02T08:00:00.000Z');
    expect(copies.problemOf(name)).toBeNull();
    const other = '20260103T080000Z-daily.db';
    copyFileSync(copies.pathOf(name), copies.pathOf(other));
    truncateSync(copies.pathOf(other), 40_000);
    expect(copies.problemOf(other)).toBe('integrity');
    writeFileSync(copies.pathOf(other), 'not a database at all');
    expect(copies.problemOf(other)).toBe('not-a-store');
    expect(() => copies.pathOf('../../etc/passwd')).toThrow();
  });
});

describe('restoring through the operations', () => {
  it('brings back what was there, keeps what it replaced, and gives the store a new incarnation', async () => {
    const test = openTestCore();
    try {
      const firm = await setUpFirm(test);
      await test.must('session.signIn', { staffId: firm.ownerId, pin: PIN });
      const incarnation = () =>
        (JSON.parse(test.snapshot()) as [string, { incarnation: string }[]][]).find(
          ([table]) => table === 'device',
        )?.[1][0]?.incarnation;
      const before = incarnation();
      test.wait(60);
      const copy = await test.must('backups.make', {});
      test.wait(60);
      await test.must('staff.create', {
        name: 'Late Comer',
        initials: 'LC',
        phone: null,
        email: null,
        roles: ['technician'],
        pin: PIN,
      });
      const { replacedKeptAs } = await test.must('backups.restore', { name: copy.name });
      expect(existsSync(join(test.folder, 'copies', replacedKeptAs ?? ''))).toBe(true);
      expect(await test.ask('staff.list', {})).toMatchObject({ ok: false, error: { code: 'not-signed-in' } });
      await test.must('session.signIn', { staffId: firm.ownerId, pin: PIN });
      expect((await test.must('staff.list', {})).map((one) => one.name)).not.toContain('Late Comer');
      expect(incarnation()).not.toBe(before);
      expect((await test.must('backups.list', {})).copies.every((one) => one.isVerified)).toBe(true);
    } finally {
      test.remove();
    }
  });

  it('refuses a copy whose sealed record was altered, and changes nothing', async () => {
    const test = openTestCore();
    try {
      const office = await setUpOffice(test);
      const run = await bookAndBegin(test, office);
      await walkRun(test, office, run, readStartupNotes());
      await test.must('visits.finish', { visitId: run.visitId, outcome: 'finished', reason: null, labourMin: null });
      await test.must('visits.seal', { visitId: run.visitId, runId: run.runId });
      await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
      const copy = await test.must('backups.make', {});
      const path = join(test.folder, 'copies', copy.name);
      const bytes = readFileSync(path);
      const at = bytes.indexOf('"typedText":"4.9"');
      expect(at).toBeGreaterThan(0);
      bytes.write('"typedText":"4.8"', at, 'latin1');
      writeFileSync(path, bytes);
      const before = test.snapshot();
      expect(await test.ask('backups.restore', { name: copy.name })).toMatchObject({
        ok: false,
        error: { code: 'copy-damaged', data: { why: 'seal-chain' } },
      });
      expect(test.snapshot()).toBe(before);
      expect((await test.must('backups.list', {})).copies.find((one) => one.name === copy.name)?.isVerified).toBe(
        false,
      );
    } finally {
      test.remove();
    }
  });
});
