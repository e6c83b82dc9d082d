/**
 * A disk that is full or refuses, at each write call of saving a reading, keeping a photo and making a backup: "not saved" is
 * the answer, nothing half-written stays, and the app goes on when there is room again. On Linux with a C compiler. LIGHTOFF_DISK_FINENESS
 * sets how many of a backup's later calls are tried (npm run faults: 10).
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBackupFolder } from '../../db/backups.ts';
import { hasIntactChains } from '../../electron/operations/sealChains.ts';
import { type Office, PIN, setUpOffice } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../support/wholeJob.ts';
import type { Struck } from './fullDiskProcess.ts';
import { buildPreload, underFailures } from './preloads.ts';
import { expectWholeStore } from './storeAfterFault.ts';

const place = mkdtempSync(join(tmpdir(), 'lightoff-full-'));
const library = buildPreload('failingDisk', place);

describe.runIf(library !== null)('a disk that is full or refuses', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  beforeAll(async () => {
    test = openTestCore(new Date().toISOString());
    office = await setUpOffice(test);
    await test.must('backups.make', {});
    run = await bookAndBegin(test, office);
    await test.must('visits.openStep', { visitId: run.visitId, runId: run.runId, stepKey: 'fill' });
    test.core.close();
  });
  afterAll(() => {
    rmSync(test.folder, { recursive: true, force: true });
    rmSync(place, { recursive: true, force: true });
  });

  it('is answered with “not saved”, leaves nothing half-written, and is over when there is room', () => {
    mkdirSync(place, { recursive: true });
    const orders = join(place, 'orders');
    writeFileSync(orders, Buffer.alloc(16));
    const program = join(APP_ROOT, 'tests/faults/fullDiskProcess.ts');
    const args = [
      program,
      test.folder,
      APP_ROOT,
      orders,
      office.ownerId,
      office.technicianId,
      PIN,
      run.visitId,
      run.runId,
    ];
    const ended = spawnSync(process.execPath, args, {
      encoding: 'utf8',
      env: { ...process.env, ...underFailures(library ?? '', test.folder, orders) },
      maxBuffer: 64_000_000,
    });
    expect(ended.status, ended.stderr).toBe(0);
    const struck = ended.stdout.split('\n').flatMap((line) => (line === '' ? [] : [JSON.parse(line) as Struck]));
    for (const what of ['reading', 'photo', 'backup']) {
      const ofIt = struck.filter((one) => one.what === what);
      // Each call in turn: at least its log page and its sync, and a full disk and a refusing one.
      expect(ofIt.filter(({ error }) => error === 'ENOSPC').length, what).toBeGreaterThanOrEqual(2);
      expect(ofIt.filter(({ error }) => error === 'EIO').length, what).toBeGreaterThanOrEqual(2);
      expect(ofIt.filter(({ answer }) => answer !== 'saved').length, what).toBeGreaterThanOrEqual(4);
    }
    for (const one of struck) {
      expect(REFUSALS[one.what], JSON.stringify(one)).toContain(one.answer);
      expect(one.left, JSON.stringify(one)).toEqual([]);
      expect(one.afterwards, JSON.stringify(one)).toBe('saved');
    }
    expectWholeStore(test.folder, []);
    const copies = openBackupFolder(join(test.folder, 'copies'), join(APP_ROOT, 'db/migrations'), hasIntactChains);
    for (const { name } of copies.list()) expect(copies.problemOf(name), name).toBeNull();
    expect(readdirSync(join(test.folder, 'copies')).every((name) => name.endsWith('.db'))).toBe(true);
    const refused = struck.filter(({ answer }) => answer !== 'saved').length;
    process.stdout.write(`${struck.length} failing write calls, ${refused} answered “not saved”, none half-written\n`);
  }, 600_000);
});

/** A call may fail after the commit, when the log is written back: what was saved is saved. */
const REFUSALS: Readonly<Record<string, readonly string[]>> = {
  reading: ['saved', 'not-saved disk-full', 'not-saved failed'],
  photo: ['saved', 'not-saved'],
  backup: ['saved', 'copy-failed disk-full', 'copy-failed failed'],
};
