/** Where the office's screens are looked at: a core with one firm in it, served to a browser of its own, one person signed in. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { type BrowserHost, startBrowserHost } from '../../electron/browserHost.ts';
import { buildApp } from '../../scripts/buildApp.ts';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';
import { type AccessProblem, checkAccess } from './checkAccess.ts';
import { launchChromium } from './chromium.ts';
import { type KeyboardHands, keyboardHands } from './keyboardHands.ts';
import { signInByKeys } from './officeByKeys.ts';
import { type Office, setUpOffice } from './officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from './testCore.ts';

export type OfficeStage = {
  readonly test: TestCore;
  readonly office: Office;
  readonly page: Page;
  readonly hands: KeyboardHands;
  /** Without the token: for a tab that is known already. */
  readonly origin: string;
  /** What went wrong in the page or in the host, for a test to say. */
  readonly faults: readonly string[];
  /** What axe found on the screens looked at. */
  readonly problems: readonly AccessProblem[];
  /** Lets axe judge the screen, or a part of it, in both looks; pictures where LIGHTOFF_SCREENSHOTS names a folder. */
  readonly look: (screen: string, within?: string) => Promise<void>;
  readonly close: () => Promise<void>;
};

export async function openOfficeStage(options: {
  readonly now?: string;
  readonly person: string;
  /** What is on file beside the firm before anybody signs in. */
  readonly prepare?: (test: TestCore, office: Office) => Promise<void>;
}): Promise<OfficeStage> {
  if (isBuildNeeded(APP_ROOT)) await buildApp(APP_ROOT, 'warn');
  const faults: string[] = [];
  const test = openTestCore(options.now ?? new Date().toISOString());
  let host: BrowserHost | undefined;
  let browser: Browser | undefined;
  const close = async () => {
    await browser?.close();
    await host?.close();
    test.remove();
  };
  try {
    const office = await setUpOffice(test);
    await options.prepare?.(test, office);
    host = await startBrowserHost({
      core: test.core,
      rendererFolder: join(APP_ROOT, 'out', 'renderer'),
      port: 0,
      logFault: (error) => {
        faults.push(String(error));
        return 'ref';
      },
    });
    browser = await launchChromium();
    const page = await browser.newPage({ viewport: { width: 1366, height: 768 }, colorScheme: 'light' });
    page.setDefaultTimeout(20_000);
    page.on('pageerror', (error) => faults.push(error.stack ?? error.message));
    const hands = keyboardHands(page);
    await page.goto(host.address);
    await signInByKeys(hands, options.person);
    const problems: AccessProblem[] = [];
    const look = async (screen: string, within?: string) => void problems.push(...(await lookAt(page, screen, within)));
    return { test, office, page, hands, origin: host.origin, faults, problems, look, close };
  } catch (error) {
    await close();
    throw error;
  }
}

async function lookAt(page: Page, screen: string, within?: string): Promise<readonly AccessProblem[]> {
  const part = within === undefined ? {} : { within };
  const light = await checkAccess(page, `${screen}, light`, part);
  await takePicture(page, `${screen}-light`);
  // The other look is the same page in other colours.
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await checkAccess(page, `${screen}, dark`, { ...part, rules: ['color-contrast'] });
  await takePicture(page, `${screen}-dark`);
  await page.emulateMedia({ colorScheme: 'light' });
  return [...light, ...dark];
}

async function takePicture(page: Page, name: string): Promise<void> {
  const folder = process.env['LIGHTOFF_SCREENSHOTS'];
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
}
