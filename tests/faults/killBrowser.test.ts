/**
 * Kills the browser at random moments of a run that is walked by keyboard: everything that was gone on from is on file, and the
 * run opens again at the item it was in. LIGHTOFF_BROWSER_KILLS sets how many (npm run faults: 10).
 */
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { askedItems } from '../../domain/procedure/progress/askedItems.ts';
import { recordByItem } from '../../domain/procedure/progress/recordByItem.ts';
import type { RunView } from '../../electron/contract/runs.ts';
import { buildApp } from '../../scripts/buildApp.ts';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';
import { chromiumLaunch, launchChromium } from '../support/chromium.ts';
import { type KeyboardHands, keyboardHands } from '../support/keyboardHands.ts';
import { signInByKeys, TECHNICIAN } from '../support/officeByKeys.ts';
import { type Office, PIN, setUpOffice } from '../support/officeScenario.ts';
import { readStage } from '../support/runStage.ts';
import { type ServedCore, serveCore } from '../support/servedCore.ts';
import { APP_ROOT, type TestCore } from '../support/testCore.ts';
import { type TurnedClock, turnedClock } from '../support/turnedClock.ts';
import { walkRunByKeys } from '../support/walkRunByKeys.ts';
import { type BookedRun, bookAndBegin, readStartupNotes } from '../support/wholeJob.ts';

const KILLS = Number(process.env['LIGHTOFF_BROWSER_KILLS'] ?? 1);
const CLIENT = 'test-window';
const notes = readStartupNotes();

describe('killing the browser', () => {
  let clock: TurnedClock;
  let served: ServedCore;
  let office: Office;
  let run: BookedRun;
  const must = (async (name, input) => {
    const reply = await served.core().call(name, input, CLIENT);
    if (!reply.ok) throw new Error(`${name} → ${JSON.stringify(reply.error)}`);
    return reply.value;
  }) as TestCore['must'];

  beforeAll(async () => {
    if (isBuildNeeded(APP_ROOT)) await buildApp(APP_ROOT, 'warn');
    clock = turnedClock('2026-03-03T13:00:00.000Z');
    served = await serveCore(clock);
    office = await setUpOffice({ must });
    run = await bookAndBegin({ must, now: clock.now }, office);
  });
  afterAll(() => served?.remove());

  it(`loses nothing that was gone on from, in ${KILLS} kills`, async () => {
    let goneOnFrom = 0;
    for (let kill = 0; kill < KILLS; kill += 1) {
      const left = await walkUntilKilled(600 + ((kill * 1733) % 1200));
      const view = await readRun();
      for (const itemKey of left.done) expectOnFile(view, itemKey);
      goneOnFrom += left.done.length;
      await expectItemOnScreen(view, left.itemKey);
    }
    // A slow machine gets no further than an item or two before the first kill.
    expect(goneOnFrom).toBeGreaterThan(0);
    process.stdout.write(`${KILLS} kills of the browser, ${goneOnFrom} items gone on from, none lost\n`);
  }, 600_000);

  /** Goes on with the run for that long; answers the items gone on from, and the one it was in when the browser died. */
  async function walkUntilKilled(afterMs: number): Promise<{ done: readonly string[]; itemKey: string }> {
    const server = await chromium.launchServer(chromiumLaunch());
    const browser = await chromium.connect(server.wsEndpoint());
    try {
      const hands = await openRun(browser);
      const { sheet } = await readRun();
      const timed = new Set(
        sheet.startup.flatMap(({ items }) =>
          items.filter(({ kind }) => kind === 'hold' || kind === 'tuning').map(({ key }) => key),
        ),
      );
      const seen: string[] = [];
      let isDue = false;
      let isKilled = false;
      const kill = () => {
        isKilled = true;
        server.process().kill('SIGKILL');
      };
      setTimeout(() => {
        isDue = true;
      }, afterMs);
      const walked = walkRunByKeys({
        hands,
        sheet,
        notes,
        wait: clock.wait,
        onMoment: async (moment) => {
          if (moment.at !== 'item') return;
          seen.push(moment.itemKey);
          // Not in a wait: the walker does not know one that is running already. tests/e2e/wholeJob.test.ts breaks that.
          if (isDue && !timed.has(moment.itemKey)) setTimeout(kill, afterMs % 50);
        },
      });
      await expect(walked).rejects.toThrow();
      expect(isKilled, 'the run was over before its browser was killed').toBe(true);
      return { done: seen.slice(0, -1), itemKey: seen.at(-1) ?? '' };
    } finally {
      await server.kill();
    }
  }

  async function expectItemOnScreen({ sheet, record }: RunView, itemKey: string): Promise<void> {
    const browser = await launchChromium();
    try {
      const { page } = await openRun(browser);
      const asked = askedItems(sheet.startup, recordByItem(record), sheet);
      const items = asked.flatMap((step) => step.items.map(({ item }) => item.key));
      // The item it was in, or the next one: the answer may have been on file before the kill, and nobody saw it.
      expect([itemKey, items[items.indexOf(itemKey) + 1]]).toContain((await readStage(page)).itemKey);
    } finally {
      await browser.close();
    }
  }

  async function openRun(browser: Browser): Promise<KeyboardHands> {
    const context = await browser.newContext({ locale: 'en-CA', timezoneId: 'America/Halifax' });
    context.setDefaultTimeout(30_000);
    await clock.installIn(context);
    const page = await context.newPage();
    const hands = keyboardHands(page);
    await page.goto(served.address());
    await signInByKeys(hands, TECHNICIAN);
    await page.goto(`${new URL(served.address()).origin}/#/run/${run.visitId}/${run.runId}`);
    await expect.poll(async () => (await readStage(page)).hasKeyboard, { timeout: 10_000 }).toBe(true);
    return hands;
  }

  async function readRun(): Promise<RunView> {
    await must('session.signIn', { staffId: office.technicianId, pin: PIN });
    return must('visits.getRun', { visitId: run.visitId, runId: run.runId });
  }

  /** What was typed or chosen, as the notes have it. */
  function expectOnFile({ record }: RunView, itemKey: string): void {
    const reading = notes.readings[itemKey];
    if (reading !== undefined && 'text' in reading) {
      expect(record.readings.find((one) => one.itemKey === itemKey)?.typedText, itemKey).toBe(reading.text);
    }
    for (const [quantity, samples] of Object.entries(notes.series[itemKey] ?? {})) {
      const kept = record.readings.filter((one) => one.itemKey === itemKey && one.quantity === quantity);
      expect(kept.map(({ typedText }) => typedText).sort(), `${itemKey} ${quantity}`).toEqual(
        samples.flatMap((sample) => ('text' in sample ? [sample.text] : [])).sort(),
      );
    }
    const answer = notes.answers[itemKey];
    if (answer !== undefined) {
      expect(record.answers.find((one) => one.itemKey === itemKey)?.value, itemKey).toBe(answer);
    }
  }
});
