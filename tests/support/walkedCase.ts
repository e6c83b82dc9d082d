/** A startup walked to its end through the operations, then opened in the browser at one of its steps: where a field case is looked at. */
import type { Browser, Page } from 'playwright-core';
import type { RecordedRun } from '../../electron/demo/recordedRun.ts';
import { launchChromium } from './chromium.ts';
import { type KeyboardHands, keyboardHands } from './keyboardHands.ts';
import { signInByKeys, TECHNICIAN } from './officeByKeys.ts';
import { type Office, type OfficeOverrides, setUpOffice } from './officeScenario.ts';
import { type ServedCore, serveCore } from './servedCore.ts';
import type { TestCore } from './testCore.ts';
import { turnedClock } from './turnedClock.ts';
import { type BookedRun, bookAndBegin, readStartupNotes, walkRun } from './wholeJob.ts';

/** Calls through the operations come from the window of the tests, beside the browser. */
const CLIENT = 'test-window';

export type WalkedCase = {
  readonly page: Page;
  readonly hands: KeyboardHands;
  readonly served: ServedCore;
  readonly office: Office;
  readonly run: BookedRun;
  readonly must: TestCore['must'];
  readonly close: () => Promise<void>;
};

export async function openWalkedCase(options: {
  readonly startAt: string;
  readonly office?: OfficeOverrides;
  readonly readings?: RecordedRun['readings'];
  /** Where the browser opens, as a hash; the technician signs in first. */
  readonly place: (office: Office, run: BookedRun) => string;
}): Promise<WalkedCase> {
  const clock = turnedClock(options.startAt);
  const served = await serveCore(clock);
  let browser: Browser | undefined;
  const close = async () => {
    await browser?.close();
    await served.remove();
  };
  try {
    const test = {
      must: (async (name, input) => {
        const reply = await served.core().call(name, input, CLIENT);
        if (!reply.ok) throw new Error(`${name} → ${JSON.stringify(reply.error)}`);
        return reply.value;
      }) as TestCore['must'],
      now: clock.now,
      wait: (seconds: number) => void clock.wait(seconds),
      core: served.core(),
    };
    const office = await setUpOffice(test, options.office);
    const run = await bookAndBegin(test, office);
    const notes = readStartupNotes();
    await walkRun(test, office, run, { ...notes, readings: { ...notes.readings, ...options.readings } });
    browser = await launchChromium();
    const context = await browser.newContext({
      locale: 'en-CA',
      timezoneId: 'America/Halifax',
      viewport: { width: 1366, height: 768 },
    });
    context.setDefaultTimeout(20_000);
    await clock.installIn(context);
    const page = await context.newPage();
    const hands = keyboardHands(page);
    await page.goto(served.address());
    await signInByKeys(hands, TECHNICIAN);
    // Text, because it runs in the page: this side knows no window.
    await page.evaluate(`location.hash = ${JSON.stringify(options.place(office, run))}`);
    return { page, hands, served, office, run, must: test.must, close };
  } catch (error) {
    await close();
    throw error;
  }
}
