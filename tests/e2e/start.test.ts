/** `npm start` as somebody types it: builds what is missing, says what it does, serves the real page, and ends cleanly on Ctrl-C. */
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { findAppRoot } from '../../electron/appRoot.ts';
import { launchChromium } from '../support/chromium.ts';

const appRoot = findAppRoot(import.meta.url);
const dataFolder = mkdtempSync(join(tmpdir(), 'lightoff-start-'));
const children: ChildProcess[] = [];

afterAll(() => {
  for (const child of children) child.kill('SIGKILL');
  rmSync(dataFolder, { recursive: true, force: true });
});

type Started = { readonly child: ChildProcess; readonly output: () => string; readonly exited: Promise<number | null> };

function start(...args: readonly string[]): Started {
  // As where the runtime was never fetched: a test opens no window on somebody's desktop.
  const environment: NodeJS.ProcessEnv = { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: dataFolder };
  for (const name of ['DISPLAY', 'WAYLAND_DISPLAY', 'LIGHTOFF_DATA', 'LIGHTOFF_FETCH_ELECTRON', 'NODE_ENV']) {
    delete environment[name];
  }
  const child = spawn(process.execPath, [join(appRoot, 'scripts', 'start.ts'), ...args], { env: environment });
  children.push(child);
  let text = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (chunk: Buffer) => {
      text += chunk.toString();
    });
  }
  // Closed, not merely ended: by then all of what it said has been read.
  const exited = new Promise<number | null>((resolve) => child.on('close', resolve));
  return { child, output: () => text, exited };
}

/** What is wrong is said once, at its field, and no longer than it is so. */
async function setUpWithMistakes(page: Page): Promise<void> {
  const wrong = () => page.locator('[aria-invalid="true"]').count();
  await page.getByRole('textbox', { name: /^Company\b(?! licence)/ }).fill('Kestrel Heating');
  await page.getByLabel('Time zone').fill('America/Torronto');
  await page.getByRole('textbox', { name: /^Name/ }).fill('Maren Oduya');
  await page.getByLabel('PIN', { exact: true }).fill('12');
  await page.getByLabel('owner / manager').uncheck();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.getByText('3 fields need another look.').count(), { timeout: 10_000 }).toBe(1);
  await page.getByLabel('owner / manager').check();
  await page.keyboard.press('Enter');
  await expect.poll(wrong, { timeout: 10_000 }).toBe(2);
  expect(await page.getByText('Four to eight digits.').count()).toBe(1);
  await page.getByLabel('PIN', { exact: true }).fill('1234');
  await expect.poll(wrong).toBe(1);
  await page.getByLabel('Time zone').fill('America/Toronto');
  await expect.poll(wrong).toBe(0);
  expect(await page.getByText('needs another look').count()).toBe(0);
}

describe('npm start', () => {
  it('serves the app for a browser, which shows it without a complaint, and closes the store on Ctrl-C', async () => {
    const { child, output, exited } = start('--browser', '--port', '0', '--data', dataFolder);
    await expect.poll(output, { timeout: 150_000 }).toMatch(/http:\/\/127\.0\.0\.1:\d+\/#token=\S+/);
    const address = /http:\/\/127\.0\.0\.1:\d+\/#token=\S+/.exec(output())?.[0] ?? '';

    const browser = await launchChromium();
    const complaints: string[] = [];
    const page = await browser.newPage();
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(String(error)));
    await page.goto(address);
    await expect.poll(() => page.locator('#root').textContent(), { timeout: 30_000 }).not.toBe('');
    expect(page.url()).not.toContain('token');
    expect(complaints).toEqual([]);
    await setUpWithMistakes(page);
    await browser.close();

    child.kill('SIGINT');
    expect(await exited).toBe(0);
    expect(existsSync(join(dataFolder, 'lightoff.db'))).toBe(true);
    expect(existsSync(join(dataFolder, 'lightoff.db-wal'))).toBe(false);
  });

  it('explains itself, and refuses what it does not know', async () => {
    const help = start('--help');
    expect(await help.exited).toBe(0);
    expect(help.output()).toContain('--fetch-electron');
    const unknown = start('--prot', '80');
    expect(await unknown.exited).toBe(2);
    expect(unknown.output()).toContain('--prot');
  });

  it('says in one line why there is no window where there is none to be had', async () => {
    const { child, output, exited } = start('--port', '0', '--data', dataFolder);
    await expect.poll(output, { timeout: 150_000 }).toMatch(/#token=/);
    child.kill('SIGTERM');
    expect(await exited).toBe(0);
    const said = output()
      .split('\n')
      .filter((line) => line.includes('Serving the app for a browser instead.'));
    expect(said).toEqual([
      'The desktop shell’s runtime (Electron) is not installed here. Serving the app for a browser instead.',
    ]);
  });
});
