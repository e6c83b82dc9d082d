import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FolderInUse } from '../../db/folderLock.ts';
import { storePath } from '../../db/openStore.ts';
import { createCore } from '../../electron/createCore.ts';
import { PIN, setUpFirm } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';

const DAY_S = 86_400;
const HOUR_MS = 3_600_000;

describe('the copy of each day', () => {
  let test: TestCore;
  let firm: Awaited<ReturnType<typeof setUpFirm>>;
  beforeEach(async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    test = openTestCore();
    // Before the first run there is nothing to keep.
    expect(existsSync(join(test.folder, 'copies'))).toBe(false);
    firm = await setUpFirm(test);
    vi.advanceTimersByTime(HOUR_MS);
  });
  afterEach(() => {
    test.remove();
    vi.useRealTimers();
  });

  // Beside them lies what came of trying one out.
  const copies = () => readdirSync(join(test.folder, 'copies')).filter((name) => name.endsWith('.db'));
  const status = () => test.must('app.status', {});
  /** As a full or broken disk would: no file can be made in the folder of the copies, for there is none. */
  const blockCopies = () => {
    rmSync(join(test.folder, 'copies'), { recursive: true, force: true });
    writeFileSync(join(test.folder, 'copies'), 'in the way');
  };
  const alter = (sql: string) => {
    const raw = new Database(storePath(test.folder));
    raw.pragma('foreign_keys = OFF');
    raw.exec(sql);
    raw.close();
  };

  it('is not asked for in a store that was set up this minute', async () => {
    const young = openTestCore();
    await setUpFirm(young);
    expect((await young.must('app.status', {})).warnings).toEqual([]);
    young.wait(DAY_S + 60);
    expect((await young.must('app.status', {})).warnings).toEqual(['no-backup-today']);
    young.remove();
  });

  it('is made in a program that nobody has closed for a week', async () => {
    expect(copies()).toHaveLength(1);
    for (let day = 0; day < 7; day += 1) {
      test.wait(DAY_S);
      vi.advanceTimersByTime(HOUR_MS);
      expect((await status()).warnings).not.toContain('no-backup-today');
    }
    expect(copies()).toHaveLength(8);
  });

  it('is made once a day, however often is looked', () => {
    vi.advanceTimersByTime(10 * HOUR_MS);
    expect(copies()).toHaveLength(1);
  });

  it('does not keep the program from starting when it cannot be made, says so, and is made when it can be again', async () => {
    blockCopies();
    test.restart();
    expect(await status()).toMatchObject({ store: 'ready', copyTrouble: { at: test.now(), why: 'failed' } });
    await test.must('session.signIn', { staffId: firm.ownerId, pin: PIN });
    expect((await test.must('backups.list', {})).copies).toEqual([]);
    expect(await test.ask('backups.make', {})).toMatchObject({
      ok: false,
      error: { code: 'copy-failed', data: { why: 'failed' } },
    });
    rmSync(join(test.folder, 'copies'));
    mkdirSync(join(test.folder, 'copies'));
    vi.advanceTimersByTime(HOUR_MS);
    expect((await status()).copyTrouble).toBeNull();
    expect(copies()).toHaveLength(1);
  });

  it('of a store with a record that points to nothing is refused, and the store still opens', async () => {
    alter(
      "INSERT INTO staff_roles (id, staff_id, role) VALUES ('01890000-0000-7000-8000-000000000001', '01890000-0000-7000-8000-000000000002', 'owner')",
    );
    test.wait(DAY_S);
    test.restart();
    expect(await status()).toMatchObject({ store: 'ready', copyTrouble: { why: 'foreign-keys' } });
    expect(copies()).toHaveLength(1);
  });

  it('leaves the folder free for another start when the store cannot be opened and no copy would help', () => {
    test.core.close();
    const raw = new Database(storePath(test.folder));
    raw.exec("INSERT INTO _migration (name, sha, at) VALUES ('9999_of_tomorrow.sql', '', '')");
    raw.close();
    const start = () => createCore({ dataFolder: test.folder, appRoot: APP_ROOT });
    expect(start).toThrow('newer version');
    expect(start).not.toThrow(FolderInUse);
  });
});
