import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { storePath } from '../../db/openStore.ts';
import { createCore } from '../../electron/createCore.ts';
import { runRestore } from '../../electron/restoreCommand.ts';
import { PIN, setUpFirm } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';
import { tinyPng } from '../support/wholeJob.ts';

const DAY_S = 86_400;
const CLIENT = 'test-window';

let test: TestCore;
let ownerId: string;
/** Stands for a disk of its own. */
let disk: string;
beforeEach(async () => {
  test = openTestCore();
  ({ ownerId } = await setUpFirm(test));
  await test.must('session.signIn', { staffId: ownerId, pin: PIN });
  disk = mkdtempSync(join(tmpdir(), 'lightoff-disk-'));
});
afterEach(() => {
  test.remove();
  rmSync(disk, { recursive: true, force: true });
});

const photo = async (name: string) => {
  const reply = await test.core.putFile(
    { bytes: tinyPng(name), mediaType: 'image/png', fileName: name, takenAt: test.now() },
    CLIENT,
  );
  if (!reply.ok) throw new Error(reply.code);
  return reply;
};
const carryOver = async () => {
  // Backups are named by the second.
  test.wait(1);
  return (await test.must('backups.carryOver', {})).secondPlace;
};
const ownFolder = () => join(disk, readdirSync(disk)[0] ?? '');
const photoPath = (root: string, sha256: string) => join(root, 'attachments', sha256.slice(0, 2), sha256);

describe('the second place', () => {
  it('holds the data and the photos, and a computer that has neither goes on from it', async () => {
    await test.must('backups.chooseSecondPlace', { folder: disk });
    const { attachmentId, sha256 } = await photo('plate');
    expect(await carryOver()).toMatchObject({ lastAt: test.now(), lastCopyAt: '2026-03-02T13:00:01Z', trouble: null });
    expect(readFileSync(photoPath(ownFolder(), sha256))).toEqual(Buffer.from(tinyPng('plate')));

    // The computer is lost.
    test.core.close();
    const own = ownFolder();
    const other = mkdtempSync(join(tmpdir(), 'lightoff-other-'));
    const asked = { dataFolder: join(other, 'data'), appRoot: APP_ROOT, from: own, now: test.now() };
    const listed = runRestore({ ...asked, name: null });
    const name = listed.lines.at(-1)?.split(' ').at(-1) ?? '';
    expect(runRestore({ ...asked, name })).toMatchObject({ exitCode: 0 });
    const core = createCore({ dataFolder: asked.dataFolder, appRoot: APP_ROOT, clock: test.now });
    try {
      await core.call('session.signIn', { staffId: ownerId, pin: PIN }, CLIENT);
      expect(await core.getFile(attachmentId, CLIENT)).toBeNull();
      expect(await core.call('backups.carryOver', {}, CLIENT)).toMatchObject({ ok: true });
      expect((await core.getFile(attachmentId, CLIENT))?.bytes).toEqual(Buffer.from(tinyPng('plate')));
    } finally {
      core.close();
      rmSync(other, { recursive: true });
    }
  });

  it('gets a new photo by itself, soon after it was taken', async () => {
    await test.must('backups.chooseSecondPlace', { folder: disk });
    await carryOver();
    const { sha256 } = await photo('route');
    await expect.poll(() => existsSync(photoPath(ownFolder(), sha256)), { timeout: 10_000 }).toBe(true);
  });

  it('that is not plugged in is said, gets nothing made in its stead, and is caught up with later', async () => {
    await test.must('backups.chooseSecondPlace', { folder: disk });
    await carryOver();
    const lastAt = test.now();
    const { sha256 } = await photo('plate');
    const away = `${disk}-away`;
    renameSync(disk, away);
    // An empty folder of the same name, as some systems leave where a disk was.
    mkdirSync(disk);
    expect(await carryOver()).toMatchObject({ lastAt, trouble: { why: 'not-reached' } });
    expect(readdirSync(disk)).toEqual([]);
    expect((await test.must('app.status', {})).warnings).not.toContain('second-place-behind');
    test.wait(DAY_S);
    expect((await test.must('app.status', {})).warnings).toContain('second-place-behind');
    expect((await test.must('backups.list', {})).copies.every(({ where }) => where === 'here')).toBe(true);
    rmSync(disk, { recursive: true });
    renameSync(away, disk);
    expect(await carryOver()).toMatchObject({ lastAt: test.now(), trouble: null });
    expect((await test.must('app.status', {})).warnings).not.toContain('second-place-behind');
    expect(existsSync(photoPath(ownFolder(), sha256))).toBe(true);
  });

  it('is gone back to when the backups here are lost, also when the data cannot be opened', async () => {
    await test.must('backups.chooseSecondPlace', { folder: disk });
    await carryOver();
    const [copy] = (await test.must('backups.list', {})).copies;
    expect(copy?.where).toBe('both');
    const name = copy?.name ?? '';
    rmSync(join(test.folder, 'copies'), { recursive: true });
    expect((await test.must('backups.list', {})).copies).toMatchObject([{ name, where: 'second' }]);
    await test.must('backups.restore', { name });
    test.core.close();
    writeFileSync(storePath(test.folder), readFileSync(storePath(test.folder)).fill(0xa5, 4096));
    rmSync(join(test.folder, 'copies'), { recursive: true });
    test.restart();
    expect((await test.must('rescue.look', {})).copies).toContainEqual(
      expect.objectContaining({ name, kept: 'monthly' }),
    );
    await test.must('rescue.restore', { name });
    expect((await test.must('app.status', {})).store).toBe('ready');
  });

  it('does not take a photo that was altered here since', async () => {
    await test.must('backups.chooseSecondPlace', { folder: disk });
    const { sha256 } = await photo('plate');
    writeFileSync(photoPath(test.folder, sha256), tinyPng('another'));
    expect(await carryOver()).toMatchObject({ damagedFiles: 1, trouble: null });
    expect(existsSync(photoPath(ownFolder(), sha256))).toBe(false);
  });

  it('is no folder that would not help', async () => {
    mkdirSync(join(test.folder, 'sub'));
    for (const [why, folder] of [
      ['not-a-full-path', 'backup'],
      ['not-there', join(disk, 'nowhere')],
      ['inside-data', join(test.folder, 'sub')],
      ['inside-data', test.folder],
    ] as const) {
      expect(await test.ask('backups.chooseSecondPlace', { folder })).toMatchObject({
        error: { code: 'folder-refused', data: { why } },
      });
    }
    expect((await test.must('backups.list', {})).secondPlace).toBeNull();
  });

  it('is forgotten when it is taken back, and what lies there stays', async () => {
    await test.must('backups.chooseSecondPlace', { folder: disk });
    await carryOver();
    await test.must('backups.chooseSecondPlace', { folder: null });
    expect(await carryOver()).toBeNull();
    expect(readdirSync(join(ownFolder(), 'copies'))).toHaveLength(1);
  });
});
