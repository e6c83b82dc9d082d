/** A new revision of a sheet, written by keyboard: kept field by field, wrong fields named and led to, previewed, published. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BrowserHost, startBrowserHost } from '../../electron/browserHost.ts';
import { buildApp } from '../../scripts/buildApp.ts';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';
import { type AccessProblem, checkAccess } from '../support/checkAccess.ts';
import { launchChromium } from '../support/chromium.ts';
import { type KeyboardHands, keyboardHands } from '../support/keyboardHands.ts';
import { OWNER, signInByKeys } from '../support/officeByKeys.ts';
import { setUpOffice } from '../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../support/testCore.ts';

const SHEET_ID = 'general-practice-natural-gas';
const pageErrors: string[] = [];
let test: TestCore;
let host: BrowserHost;
let browser: Browser;
let page: Page;
let hands: KeyboardHands;

beforeAll(async () => {
  if (isBuildNeeded(APP_ROOT)) await buildApp(APP_ROOT, 'warn');
  test = openTestCore(new Date().toISOString());
  await setUpOffice(test);
  host = await startBrowserHost({
    core: test.core,
    rendererFolder: join(APP_ROOT, 'out', 'renderer'),
    port: 0,
    logFault: (error) => {
      pageErrors.push(String(error));
      return 'ref';
    },
  });
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 1366, height: 768 }, colorScheme: 'light' });
  page.setDefaultTimeout(15_000);
  page.on('pageerror', (error) => pageErrors.push(error.stack ?? error.message));
  hands = keyboardHands(page);
  await page.goto(host.address);
  await signInByKeys(hands, OWNER);
});

afterAll(async () => {
  await browser?.close();
  await host?.close();
  test?.remove();
});

describe('the sheet editor', () => {
  it('keeps what is typed, names what is wrong, leads to it, takes back, previews and publishes', async () => {
    const access: AccessProblem[] = [];
    const before = await test.must('sheets.get', { sheetId: SHEET_ID, revision: null });
    await page.goto(`${host.origin}/#/sheets/${SHEET_ID}`);
    await page.getByRole('button', { name: 'New revision of this sheet' }).waitFor();
    await hands.pressButton('New revision of this sheet');
    await page.getByText(/^A draft, begun from/).waitFor();

    await hands.pressButton('Firing points and steadiness');
    await hands.tabTo('Clocked input may differ from the rating by (%)');
    await hands.press('Control+a');
    await hands.type('about ten');
    await page.getByText('Not a number.', { exact: true }).waitFor();
    expect(await page.getByRole('button', { name: 'Publish' }).isDisabled()).toBe(true);

    // From another part, the list of what is wrong leads back to the field.
    await hands.pressButton('Limits', 'Shift+Tab');
    await page.getByRole('heading', { name: 'Limits' }).waitFor();
    access.push(...(await checkAccess(page, 'limits', { within: 'main' })));
    await hands.pressButton(/Clocked input may differ.*Not a number/);
    await expect
      .poll(() => page.evaluate("document.activeElement?.closest('[data-path]')?.dataset.path"))
      .toBe('inputTolerancePct');
    await hands.press('Control+a');
    await hands.type('9');
    await hands.press('Tab');
    await page.getByText('Nothing is wrong with it.').waitFor();

    // A limit is added, left half typed, reloaded, and taken back.
    await hands.pressButton('Limits', 'Shift+Tab');
    await hands.pressButton('Add to Limits');
    await expect.poll(() => page.evaluate('document.activeElement.dataset.button')).toBe('open');
    await page.reload();
    await page.getByRole('heading', { name: /^To put right: \d+$/ }).waitFor();
    await page
      .getByRole('button', { name: /^Limits, .*At least one|^Limits, \d+, / })
      .first()
      .waitFor();
    await hands.pressButton('Take back the last change');
    await page.getByText('Nothing is wrong with it.').waitFor();

    await hands.pressButton('Startup, step by step');
    await page.getByRole('button', { name: /^Up / }).first().waitFor();
    const firstStep = page.locator('.sheet-list > ol > li').first();
    await firstStep.locator('[data-button="open"]').focus();
    await hands.press('Enter');
    await firstStep.locator('.sheet-entry-body [data-button="open"]').first().focus();
    await hands.press('Enter');
    access.push(...(await checkAccess(page, 'a step', { within: 'main' })));
    await shoot('sheet-editor-step');

    await hands.pressButton('Preview', 'Shift+Tab');
    await page.locator('.sheet-preview .run-card').first().waitFor();
    access.push(...(await checkAccess(page, 'preview', { within: 'main' })));
    await page.emulateMedia({ colorScheme: 'dark' });
    access.push(...(await checkAccess(page, 'preview, dark', { within: 'main', rules: ['color-contrast'] })));
    await shoot('sheet-editor-preview-dark');

    await hands.pressButton('Publish', 'Shift+Tab');
    await page.getByRole('button', { name: 'New revision of this sheet' }).waitFor();
    const published = await test.must('sheets.get', { sheetId: SHEET_ID, revision: null });
    expect(published.inputTolerancePct).toBe(9);
    expect(published.limits).toEqual(before.limits);
    expect(before.inputTolerancePct).not.toBe(9);
    expect(access).toEqual([]);
    expect(pageErrors).toEqual([]);
  }, 60_000);
});

async function shoot(name: string): Promise<void> {
  const folder = process.env['LIGHTOFF_SCREENSHOTS'];
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
}
