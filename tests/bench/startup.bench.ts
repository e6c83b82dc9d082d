/**
 * From `npm start` on a demo store that is there already until somebody can type a PIN, and until the day is on screen when it
 * is typed at once: npm, core, store, and the page in a Chromium that is open already. The median of several starts.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Browser } from 'playwright-core';
import { DEMO_PIN } from '../../electron/demo/demoStore.ts';
import { buildApp } from '../../scripts/buildApp.ts';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';
import { launchChromium } from '../support/chromium.ts';
import { APP_ROOT } from '../support/testCore.ts';
import type { BenchResult } from './benchResult.ts';

const GOAL_MS = 3000;
const ROUNDS = 5;

export async function benchStartup(): Promise<readonly BenchResult[]> {
  if (isBuildNeeded(APP_ROOT)) await buildApp(APP_ROOT, 'warn');
  const dataFolder = mkdtempSync(join(tmpdir(), 'lightoff-bench-'));
  const browser = await launchChromium();
  try {
    // Makes the demo store, which is done once; its time is not a start's.
    await startAndShow(browser, dataFolder);
    const starts: Start[] = [];
    for (let round = 0; round < ROUNDS; round += 1) starts.push(await startAndShow(browser, dataFolder));
    const result = (until: string, ms: readonly number[]): BenchResult => ({
      name: `npm start on the demo store until ${until}, ms`,
      ms: [...ms].sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? Number.NaN,
      rawMs: null,
      goal: GOAL_MS,
    });
    return [
      result(
        'a PIN can be typed',
        starts.map((start) => start.askedMs),
      ),
      result(
        'the day is shown',
        starts.map((start) => start.shownMs),
      ),
    ];
  } finally {
    await browser.close();
    rmSync(dataFolder, { recursive: true, force: true });
  }
}

type Start = { readonly askedMs: number; readonly shownMs: number };

async function startAndShow(browser: Browser, dataFolder: string): Promise<Start> {
  const context = await browser.newContext();
  const page = await context.newPage();
  const startedAt = performance.now();
  const args = ['start', '--silent', '--', '--browser', '--demo', '--port', '0', '--data', dataFolder];
  // A group of its own: npm passes an end on to what it started only when the whole group hears it.
  const child = spawn('npm', args, { cwd: APP_ROOT, stdio: ['ignore', 'pipe', 'inherit'], detached: true });
  try {
    await page.goto(await addressFrom(child));
    await page.getByLabel(/^PIN of /).waitFor({ timeout: 60_000 });
    const askedMs = performance.now() - startedAt;
    await page.getByLabel(/^PIN of /).fill(DEMO_PIN);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Switch person' }).waitFor();
    await page.locator('main [aria-busy="true"]').waitFor({ state: 'detached' });
    return { askedMs, shownMs: performance.now() - startedAt };
  } finally {
    await context.close();
    await ended(child);
  }
}

async function addressFrom(child: ChildProcess): Promise<string> {
  if (child.stdout === null) throw new Error('npm start has no output');
  for await (const line of createInterface(child.stdout)) {
    const address = /http:\/\/127\.0\.0\.1:\d+\/#token=\S+/.exec(line)?.[0];
    if (address !== undefined) return address;
  }
  throw new Error('npm start ended without an address');
}

function ended(child: ChildProcess): Promise<unknown> {
  if (child.exitCode !== null || child.pid === undefined) return Promise.resolve();
  const exited = new Promise((resolve) => child.on('exit', resolve));
  process.kill(-child.pid, 'SIGINT');
  return exited;
}
