/** The desktop shell without its runtime: real main code, real preload, real core in a thread of its own, a real page in Chromium. */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { everyTopic } from '../../electron/contract/wire.ts';
import { startShell } from '../../electron/startShell.ts';
import { askHeard, askPage } from '../support/askPage.ts';
import { launchChromium } from '../support/chromium.ts';
import { showWindowsIn } from '../support/chromiumWindow.ts';
import { app, state } from '../support/electronDouble.ts';
import { COMPANY, PIN } from '../support/officeScenario.ts';
import { buildShell, type ShellBuild } from '../support/shellBuild.ts';
import { stripedPng } from '../support/stripedPng.ts';

const dataFolder = mkdtempSync(join(tmpdir(), 'lightoff-shell-'));
const deadline = { timeout: 60_000 };
let built: ShellBuild;
let browser: Browser;
let page: Page;

const ask = (what: string, ...args: unknown[]) => askPage(page, what, ...args);

beforeAll(async () => {
  built = await buildShell();
  browser = await launchChromium();
  const { shown } = showWindowsIn(browser, built);
  startShell({
    location: { appRoot: built.appRoot, dataFolder, startInDemo: false },
    rendererFolder: built.rendererFolder,
    shellFolder: built.shellFolder,
  });
  page = await vi.waitUntil(() => shown.at(0)?.page, deadline);
  await vi.waitUntil(async () => (await askHeard(page)).states.at(-1) === 'online', deadline);
});

afterAll(async () => {
  await browser?.close();
  built?.remove();
  rmSync(dataFolder, { recursive: true, force: true });
});

describe('the window', () => {
  it('reaches the core in its own process through the preload’s port', async () => {
    expect(await ask('call', 'app.status', {})).toMatchObject({ ok: true, value: { store: 'empty', dataFolder } });
  });

  it('has one frozen function of the shell and nothing of Node', async () => {
    expect(await ask('bridge')).toEqual({ names: ['connect'], isUnchanged: true, refusals: [true, true, true] });
    expect(await ask('globals')).toEqual([]);
  });

  it('runs no foreign script and fetches from nowhere else', async () => {
    expect(await ask('tryInline')).toBe(false);
    expect(await ask('tryEval')).toBe('refused');
    expect(await ask('tryFetch', 'https://example.com/')).toBe('refused');
    expect(await ask('tryFrame', 'https://example.com/')).toBe('refused');
    await expect
      .poll(async () => (await askHeard(page)).violations)
      .toEqual(
        expect.arrayContaining(['script-src-elem', 'script-src-attr', 'script-src', 'connect-src', 'frame-src']),
      );
  });

  it('stays on its page, and hands a web link to the system', async () => {
    const before = state.openedOutside.length;
    await ask('go', 'https://example.com/manual');
    await expect.poll(() => state.openedOutside.slice(before)).toEqual(['https://example.com/manual']);
    await ask('go', 'https://lightoff.test.example.com/');
    await expect.poll(() => state.openedOutside.length).toBe(before + 2);
    expect(await ask('address')).toBe('https://lightoff.test/index.html');
    expect(await ask('call', 'app.status', {})).toMatchObject({ ok: true });
  });

  it('opens no second window', async () => {
    const before = state.openedOutside.length;
    await ask('open', 'https://example.com/other');
    await expect.poll(() => state.openedOutside.slice(before)).toEqual(['https://example.com/other']);
    await expect.poll(() => page.context().pages().length).toBe(1);
  });
});

describe('work through the window', () => {
  const bytes = stripedPng(400, 300, 7, [
    [20, 30, 40],
    [200, 210, 220],
  ]);

  it('sets the firm up, signs in, keeps a photo byte for byte and stays signed in over a reload', async () => {
    const people = [{ name: 'Maren Oduya', initials: 'MO', roles: ['owner'], pin: PIN }];
    const setUp = (await ask('call', 'app.completeFirstRun', { company: COMPANY, people })) as {
      readonly value: { readonly people: readonly { readonly staffId: string }[] };
    };
    const staffId = setUp.value.people[0]?.staffId;
    expect(await ask('call', 'session.signIn', { staffId, pin: PIN })).toMatchObject({ ok: true });

    const file = { bytes, mediaType: 'image/png', fileName: 'Typenschild – Żar.png', takenAt: null };
    const put = (await ask('putFile', file)) as { readonly ok: boolean; readonly attachmentId: string };
    expect(put).toMatchObject({ ok: true });
    const got = (await ask('getFile', put.attachmentId)) as { readonly file: { readonly bytes: Uint8Array } };
    expect(Buffer.from(got.file.bytes).equals(Buffer.from(bytes))).toBe(true);

    await page.reload();
    await expect.poll(async () => (await askHeard(page)).states.at(-1), deadline).toBe('online');
    expect(await ask('call', 'app.status', {})).toMatchObject({ ok: true, value: { signedIn: { staffId } } });
  });

  it('hears that something changed', async () => {
    await ask('call', 'session.chooseUnits', { unitSystem: 'us' });
    await ask('call', 'company.update', { ...COMPANY, name: 'Kittiwake Heating Ltd' });
    await expect.poll(async () => (await askHeard(page)).topics.length).toBeGreaterThan(0);
  });
});

describe('when the core’s process dies', () => {
  it('the window says so, gets a new one by itself, and nothing that was saved is gone', async () => {
    const before = (await askHeard(page)).states.length;
    state.children.at(-1)?.kill();
    await expect.poll(async () => (await askHeard(page)).states.slice(before), deadline).toEqual(['offline', 'online']);
    expect((await askHeard(page)).topics.at(-1)).toEqual([everyTopic]);
    expect(await ask('call', 'app.status', {})).toMatchObject({
      ok: true,
      value: { store: 'ready', company: { name: 'Kittiwake Heating Ltd' }, signedIn: null },
    });
  });
});

describe('when the last window is closed', () => {
  it('the store is closed properly before the shell ends', async () => {
    app.emit('window-all-closed');
    await expect.poll(() => state.exits.at(-1), deadline).toBe(0);
    expect(existsSync(join(dataFolder, 'lightoff.db'))).toBe(true);
    expect(existsSync(join(dataFolder, 'lightoff.db-wal'))).toBe(false);
  });
});
