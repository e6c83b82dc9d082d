import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { storePath } from '../../db/openStore.ts';
import { finishRestore, stageRestore } from '../../db/restore.ts';
import { runRestore } from '../../electron/restoreCommand.ts';
import { PIN, setUpFirm } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';

let test: TestCore;
let ownerId: string;
/** A firm, a copy of it, and somebody who came after the copy. */
let copyName: string;
beforeEach(async () => {
  test = openTestCore();
  ({ ownerId } = await setUpFirm(test));
  await test.must('session.signIn', { staffId: ownerId, pin: PIN });
  await test.must('backups.make', {});
  test.wait(60);
  copyName = (await test.must('backups.make', {})).name;
  test.wait(60);
  await addPerson('Late Comer');
});
afterEach(() => test.remove());

const addPerson = (name: string) =>
  test.must('staff.create', { name, initials: 'LC', phone: null, email: null, roles: ['technician'], pin: PIN });
const file = () => storePath(test.folder);
const people = async () => (await test.must('app.status', {})).people.map(({ name }) => name);
const change = (sql: string) => {
  const raw = new Database(file());
  raw.pragma('foreign_keys = OFF');
  raw.exec(sql);
  raw.close();
};
/** Overwrites all but the first page, as a failing disk does: the header says a store, and it is none. */
const damage = () => {
  const bytes = readFileSync(file());
  writeFileSync(file(), bytes.fill(0xa5, 4096));
};
const restart = (ruin: () => void) => {
  test.core.close();
  ruin();
  test.restart();
};

describe('a store that cannot be opened', () => {
  it('starts and offers to go back to the newest backup that is whole, where it used to end with an error', async () => {
    restart(() => {
      damage();
      writeFileSync(join(test.folder, 'copies', '20991231T000000Z-daily.db'), 'cut short');
    });
    expect(await test.ask('app.status', {})).toMatchObject({
      ok: false,
      error: { code: 'store-closed', data: { trouble: 'damaged' } },
    });
    const { trouble, copies } = await test.must('rescue.look', {});
    expect(trouble).toBe('damaged');
    expect(copies.map(({ found }) => found)).toEqual(['not-a-store', 'whole', 'not-checked']);
    expect(copies[1]?.name).toBe(copyName);
    expect(await test.ask('rescue.restore', { name: copies[0]?.name ?? '' })).toMatchObject({
      ok: false,
      error: { code: 'copy-damaged', data: { why: 'not-a-store' } },
    });
    expect(await test.ask('rescue.restore', { name: '../lightoff.db' })).toMatchObject({
      error: { code: 'not-found' },
    });
    const { replacedKeptAs } = await test.must('rescue.restore', { name: copyName });
    expect(existsSync(join(test.folder, replacedKeptAs ?? ''))).toBe(true);
    expect(await people()).toEqual(expect.not.arrayContaining(['Late Comer']));
    await test.must('session.signIn', { staffId: ownerId, pin: PIN });
    await addPerson('Comes After');
    // Nobody may go back without signing in once the store is open.
    expect(await test.ask('rescue.restore', { name: copyName })).toMatchObject({ error: { code: 'store-is-open' } });
  });

  it('that is gone is not made anew as an empty one while its backups are there', async () => {
    restart(() => rmSync(file()));
    expect(existsSync(file())).toBe(false);
    expect((await test.must('rescue.look', {})).trouble).toBe('missing');
    await test.must('rescue.restore', { name: copyName });
    expect(await people()).toContain('Maren Oduya');
  });

  it('of which only the replaced file is left is offered that file', async () => {
    restart(() => {
      rmSync(join(test.folder, 'copies'), { recursive: true });
      renameSync(file(), `${file()}.replaced-20260302T131000000Z`);
    });
    const [left] = (await test.must('rescue.look', {})).copies;
    expect(left).toMatchObject({ kept: 'replaced', found: 'whole' });
    await test.must('rescue.restore', { name: left?.name ?? '' });
    expect(await people()).toContain('Late Comer');
  });
});

describe('a return to a backup', () => {
  it('works from a store whose records do not fit together, of which no copy can be made', async () => {
    change(
      "INSERT INTO staff_roles (id, staff_id, role) VALUES ('01890000-0000-7000-8000-000000000001', '01890000-0000-7000-8000-000000000002', 'owner')",
    );
    const { replacedKeptAs } = await test.must('backups.restore', { name: copyName });
    expect(replacedKeptAs).toMatch(/^lightoff\.db\.replaced-/);
    expect(existsSync(join(test.folder, replacedKeptAs ?? ''))).toBe(true);
    expect(await people()).not.toContain('Late Comer');
  });

  it('to the oldest of the backups made before a return does not lose it to the next one', async () => {
    let first = '';
    for (let count = 0; count < 4; count += 1) {
      test.wait(60);
      const { replacedKeptAs } = await test.must('backups.restore', { name: count === 3 ? first : copyName });
      await test.must('session.signIn', { staffId: ownerId, pin: PIN });
      if (count === 0) first = replacedKeptAs ?? '';
    }
    expect(await people()).toContain('Late Comer');
    const names = readdirSync(test.folder).filter((name) => name.includes('.replaced-'));
    expect(names.length).toBeLessThanOrEqual(3);
    expect(readdirSync(join(test.folder, 'copies')).filter((name) => name.includes('before-restore'))).toHaveLength(3);
  });

  it('cut off anywhere leaves the old store or the copy, and the next start goes on with what was decided', async () => {
    test.core.close();
    const staged = () => stageRestore(join(test.folder, 'copies', copyName), file(), test.now());
    staged();
    // Cut before it was decided: as it was.
    test.restart();
    expect(await people()).toContain('Late Comer');
    // Cut right after it was decided, and cut with the old store put aside and nothing in its place yet.
    for (const cut of ['decided', 'put aside']) {
      test.core.close();
      staged();
      renameSync(`${file()}.restoring.part`, `${file()}.restoring`);
      if (cut === 'put aside') renameSync(file(), `${file()}.replaced-20260302T131000Z`);
      test.restart();
      expect(await people()).toEqual(expect.not.arrayContaining(['Late Comer']));
      expect(finishRestore(file())).toBeNull();
      await test.must('session.signIn', { staffId: ownerId, pin: PIN });
      await addPerson('Late Comer');
    }
  });
});

describe('npm run restore', () => {
  const run = (dataFolder: string, name: string | null) =>
    runRestore({ dataFolder, from: null, name, appRoot: APP_ROOT, now: test.now() });

  it('lists the backups and goes back to the one that is named', async () => {
    expect(run(test.folder, null)).toMatchObject({
      exitCode: 1,
      lines: [expect.stringContaining('Another Lightoff has this data folder open')],
    });
    test.core.close();
    damage();
    const listed = run(test.folder, null);
    expect(listed.exitCode).toBe(0);
    expect(listed.lines[1]).toContain(`${copyName}  `);
    expect(listed.lines.at(-1)).toContain(`npm run restore -- --data ${test.folder} ${copyName}`);
    expect(run(test.folder, 'no-such.db').exitCode).toBe(1);
    const typed = spawnSync(
      process.execPath,
      [join(APP_ROOT, 'electron', 'cli.ts'), 'restore', '--data', test.folder, copyName],
      { encoding: 'utf8' },
    );
    expect(typed.stderr).toBe('');
    expect(typed.stdout).toContain('The damaged or replaced file is kept as lightoff.db.replaced-');
    test.restart();
    expect(await people()).toEqual(expect.not.arrayContaining(['Late Comer']));
  });

  it('says so where there is nothing to go back to, and makes no folder', () => {
    const nowhere = join(test.folder, 'elsewhere');
    expect(run(nowhere, null).lines).toEqual([expect.stringContaining('There is no data folder')]);
    expect(existsSync(nowhere)).toBe(false);
    mkdirSync(nowhere);
    expect(run(nowhere, null).lines).toEqual([expect.stringContaining('There is no backup in')]);
  });
});
