/**
 * The board with 60 technicians and 2 000 visits in Chromium: how long it takes to show, and how far apart frames lie while it
 * is scrolled both ways and while a visit is dragged across it. Frames are those of the page's thread in Chromium's own trace.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { startBrowserHost } from '../../electron/browserHost.ts';
import { createCore } from '../../electron/createCore.ts';
import { buildApp } from '../../scripts/buildApp.ts';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';
import { launchChromium } from '../support/chromium.ts';
import { DISPATCHER, writeLargeCompany } from '../support/largeCompany.ts';
import { PIN } from '../support/officeScenario.ts';
import { APP_ROOT } from '../support/testCore.ts';
import type { BenchResult } from './benchResult.ts';

const NOW = '2026-03-02T12:00:00.000Z';
const FRAME_GOAL_MS = 50;

export async function benchBoard(): Promise<readonly BenchResult[]> {
  if (isBuildNeeded(APP_ROOT)) await buildApp(APP_ROOT, 'warn');
  const dataFolder = mkdtempSync(join(tmpdir(), 'lightoff-board-'));
  writeLargeCompany(dataFolder, { technicians: 60, visits: 2000, waitingJobs: 40, weekOf: '2026-03-02', now: NOW });
  const core = createCore({ appRoot: APP_ROOT, dataFolder, clock: () => NOW, steadyClockMs: () => performance.now() });
  const host = await startBrowserHost({
    core,
    rendererFolder: join(APP_ROOT, 'out', 'renderer'),
    port: 0,
    logFault: () => 'ref',
  });
  const browser = await launchChromium();
  try {
    const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } });
    await page.goto(host.address);
    await page.getByRole('button', { name: DISPATCHER }).click();
    await page.getByLabel(`PIN of ${DISPATCHER}`).fill(PIN);
    await page.keyboard.press('Enter');
    await page.getByRole('navigation', { name: 'Main' }).waitFor();
    const shownMs = await showBoard(page);
    const week = await framesOfView(browser, page);
    await page.getByText('Week by hours').click();
    await page.evaluate("document.querySelector('.lo-board').scrollTop = 0");
    const hours = await framesOfView(browser, page);
    return [
      { name: 'board of 60 technicians and 2 000 visits: until it is shown', ms: shownMs, rawMs: null, goal: 3000 },
      frameLine('the same while scrolled, all days in sight', week.scrolling),
      frameLine('the same while a visit is dragged, all days in sight', week.dragging),
      frameLine('the same while scrolled both ways, week by hours', hours.scrolling),
      frameLine('the same while a visit is dragged, week by hours', hours.dragging),
    ];
  } finally {
    await browser.close();
    await host.close();
    core.close();
    rmSync(dataFolder, { recursive: true, force: true });
  }
}

async function framesOfView(browser: Browser, page: Page) {
  const scrolling = await framesOf(browser, page, () => scrollBothWays(page));
  const dragging = await framesOf(browser, page, () => dragAcross(page));
  return { scrolling, dragging };
}

async function showBoard(page: Page): Promise<number> {
  const start = performance.now();
  await page.evaluate("window.location.hash = '#/board/2026-03-02'");
  await page.locator('.lo-board-visit').first().waitFor();
  return performance.now() - start;
}

async function scrollBothWays(page: Page): Promise<void> {
  await page.mouse.move(900, 600);
  for (let step = 0; step < 60; step += 1) {
    await page.mouse.wheel(0, 90);
    await page.waitForTimeout(16);
  }
  for (let step = 0; step < 40; step += 1) {
    await page.mouse.wheel(50, -60);
    await page.waitForTimeout(16);
  }
}

/** Not one under the head or the names: where a visit really lies under the pointer. */
const VISIT_IN_SIGHT = `(() => {
  for (const visit of document.querySelectorAll('.lo-board-visit')) {
    const box = visit.getBoundingClientRect();
    const place = { x: box.left + 10, y: box.top + 20 };
    if (box.top > 400 && visit.contains(document.elementFromPoint(place.x, place.y))) return place;
  }
  return null;
})()`;

async function dragAcross(page: Page): Promise<void> {
  const start = await page.evaluate<{ readonly x: number; readonly y: number } | null>(VISIT_IN_SIGHT);
  if (start === null) throw new Error('no visit to drag');
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  for (let step = 0; step < 120; step += 1) {
    await page.mouse.move(start.x + step * 4, start.y + Math.sin(step / 8) * 160);
    await page.waitForTimeout(16);
    if (step === 60 && (await page.locator('.lo-board-ghost').count()) !== 1) throw new Error('nothing is dragged');
  }
  await page.keyboard.press('Escape');
  await page.mouse.up();
}

function frameLine(what: string, gaps: readonly number[]): BenchResult {
  return { name: `${what}: frames, 95th percentile`, ms: p95(gaps), rawMs: null, goal: FRAME_GOAL_MS };
}

type TraceEvent = { readonly name: string; readonly ts: number };

/** Asks for a frame whenever there can be one, so that a late one shows. */
const ASK_FOR_EVERY_FRAME =
  'window.lightoffFrames = true; (function again() { if (window.lightoffFrames) requestAnimationFrame(again); })()';

/** Milliseconds between one frame of the page and the next while `work` goes on. */
async function framesOf(browser: Browser, page: Page, work: () => Promise<void>): Promise<readonly number[]> {
  await page.evaluate(ASK_FOR_EVERY_FRAME);
  await browser.startTracing(page, {
    categories: ['devtools.timeline', 'disabled-by-default-devtools.timeline.frame', 'devtools.timeline.frame'],
  });
  await work();
  const trace = JSON.parse((await browser.stopTracing()).toString('utf8')) as {
    readonly traceEvents: readonly TraceEvent[];
  };
  await page.evaluate('window.lightoffFrames = false');
  const frames = trace.traceEvents
    .filter(({ name }) => name === 'BeginMainThreadFrame')
    .toSorted((a, b) => a.ts - b.ts);
  const gaps = frames.slice(1).map((frame, index) => (frame.ts - (frames[index]?.ts ?? frame.ts)) / 1000);
  if (gaps.length < 60) throw new Error(`only ${gaps.length} frames in the trace`);
  return gaps;
}

function p95(gaps: readonly number[]): number {
  return gaps.toSorted((a, b) => a - b)[Math.floor(gaps.length * 0.95)] ?? Number.NaN;
}
