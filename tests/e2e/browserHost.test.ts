/** The app in a browser: the real host over the real core, and the window's HTTP transport in Chromium. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BrowserHost, startBrowserHost } from '../../electron/browserHost.ts';
import type { Core } from '../../electron/core.ts';
import { createCore } from '../../electron/createCore.ts';
import { askHeard, askPage } from '../support/askPage.ts';
import { launchChromium } from '../support/chromium.ts';
import { COMPANY, PIN } from '../support/officeScenario.ts';
import { buildProbePage, type ShellBuild } from '../support/shellBuild.ts';
import { stripedPng } from '../support/stripedPng.ts';

const dataFolder = mkdtempSync(join(tmpdir(), 'lightoff-browser-'));
const deadline = { timeout: 30_000 };
let built: Pick<ShellBuild, 'appRoot' | 'rendererFolder' | 'remove'>;
let core: Core;
let host: BrowserHost;
let browser: Browser;
let context: BrowserContext;
let page: Page;

const serve = (port: number) =>
  startBrowserHost({ core, rendererFolder: built.rendererFolder, port, logFault: () => 'ref' });

async function openTab(address: string): Promise<Page> {
  const tab = await context.newPage();
  await tab.goto(address);
  return tab;
}

beforeAll(async () => {
  built = await buildProbePage();
  core = createCore({ appRoot: built.appRoot, dataFolder });
  host = await serve(0);
  browser = await launchChromium();
  context = await browser.newContext();
  page = await openTab(host.address);
});

afterAll(async () => {
  await browser?.close();
  await host?.close();
  core?.close();
  built?.remove();
  rmSync(dataFolder, { recursive: true, force: true });
});

describe('a tab opened by the printed address', () => {
  it('takes the token out of the address bar and still reaches the core', async () => {
    expect(page.url()).toBe(`${host.origin}/`);
    expect(await askPage(page, 'call', 'app.status', {})).toMatchObject({ ok: true, value: { store: 'empty' } });
  });

  it('runs no foreign script and fetches from nowhere else', async () => {
    expect(await askPage(page, 'tryInline')).toBe(false);
    expect(await askPage(page, 'tryEval')).toBe('refused');
    expect(await askPage(page, 'tryFetch', 'https://example.com/')).toBe('refused');
    expect(await askPage(page, 'tryFrame', `${host.origin}/`)).toBe('refused');
  });

  it('keeps its sign-in over a reload, apart from every other tab', async () => {
    const people = [{ name: 'Maren Oduya', initials: 'MO', roles: ['owner'], pin: PIN }];
    const setUp = (await askPage(page, 'call', 'app.completeFirstRun', { company: COMPANY, people })) as {
      readonly value: { readonly people: readonly { readonly staffId: string }[] };
    };
    const staffId = setUp.value.people[0]?.staffId;
    expect(await askPage(page, 'call', 'session.signIn', { staffId, pin: PIN })).toMatchObject({ ok: true });
    await page.reload();
    expect(await askPage(page, 'call', 'app.status', {})).toMatchObject({ ok: true, value: { signedIn: { staffId } } });

    const other = await openTab(host.address);
    expect(await askPage(other, 'call', 'app.status', {})).toMatchObject({ ok: true, value: { signedIn: null } });
    await other.close();
  });

  it('keeps a photo byte for byte', async () => {
    const bytes = stripedPng(300, 200, 5, [
      [1, 2, 3],
      [250, 251, 252],
    ]);
    const file = { bytes, mediaType: 'image/png', fileName: 'Żar – 3.png', takenAt: '2026-03-02T13:00:00.000Z' };
    const put = (await askPage(page, 'putFile', file)) as { readonly ok: boolean; readonly attachmentId: string };
    expect(put).toMatchObject({ ok: true });
    const got = (await askPage(page, 'getFile', put.attachmentId)) as {
      readonly file: { readonly bytes: Uint8Array; readonly fileName: string };
    };
    expect(Buffer.from(got.file.bytes).equals(Buffer.from(bytes))).toBe(true);
    expect(got.file.fileName).toBe('Żar – 3.png');
  });

  it('hears what another tab changed', async () => {
    const other = await openTab(host.address);
    await expect.poll(async () => (await askHeard(other)).states.at(-1), deadline).toBe('online');
    await askPage(page, 'call', 'company.update', { ...COMPANY, name: 'Kittiwake Heating Ltd' });
    await expect.poll(async () => (await askHeard(other)).topics.length, deadline).toBeGreaterThan(0);
    await other.close();
  });
});

describe('a tab opened without the token', () => {
  it('shows the page, is told that it is locked out, and gets nothing from the core', async () => {
    const stranger = await (await browser.newContext()).newPage();
    await stranger.goto(`${host.origin}/`);
    expect((await askHeard(stranger)).states).toEqual(['locked-out']);
    expect(await askPage(stranger, 'call', 'app.status', {})).toMatchObject({ ok: false, error: { code: 'offline' } });
    await stranger.context().close();
  });
});

describe('when the host stops and starts again', () => {
  it('the tab says offline, then that its token is of an earlier start; the new address brings it back', async () => {
    await expect.poll(async () => (await askHeard(page)).states.at(-1), deadline).toBe('online');
    const { port } = host;
    await host.close();
    await expect.poll(async () => (await askHeard(page)).states.at(-1), deadline).toBe('offline');
    host = await serve(port);
    await expect.poll(async () => (await askHeard(page)).states.at(-1), deadline).toBe('locked-out');
    // In the same tab only the fragment differs: no browser loads the page again for that.
    await page.goto(host.address);
    await expect.poll(() => page.url(), deadline).toBe(`${host.origin}/`);
    await page.waitForLoadState();
    expect(await askPage(page, 'call', 'app.status', {})).toMatchObject({ ok: true, value: { store: 'ready' } });
  });
});
