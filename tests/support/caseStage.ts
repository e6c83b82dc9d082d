/**
 * Where field cases are looked at: one served firm and one browser for all of them, by night and at the size of a small laptop
 * at 150 %. Each case has its own house and a startup walked through the operations as far as the item it is about.
 */
import type { Browser, Page } from 'playwright-core';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { RecordedRun } from '../../electron/demo/recordedRun.ts';
import { launchChromium } from './chromium.ts';
import { type KeyboardHands, keyboardHands } from './keyboardHands.ts';
import { signInByKeys, TECHNICIAN } from './officeByKeys.ts';
import { type Office, type OfficeOverrides, PIN, setUpCrew, setUpHouse } from './officeScenario.ts';
import { type ServedCore, serveCore } from './servedCore.ts';
import type { TestCore } from './testCore.ts';
import { type TurnedClock, turnedClock } from './turnedClock.ts';
import { type BookedRun, bookAndBegin, readStartupNotes, walkRun } from './wholeJob.ts';

/** Calls through the operations come from the window of the tests, beside the browser. */
const CLIENT = 'test-window';

/** 1366 × 768 at 150 %. */
const SCREEN = { viewport: { width: 911, height: 512 }, deviceScaleFactor: 1.5 } as const;

export type BegunCase = {
  readonly office: Office;
  readonly run: BookedRun;
  /** Goes on from where it was left; the notes as for the case, and what is said anew. */
  readonly walkOn: (until: string | null, notes?: CaseOptions['notes']) => Promise<void>;
};

export type CaseOptions = {
  readonly office?: OfficeOverrides;
  /** What was written down otherwise than at the startup that all cases share. */
  readonly notes?: Partial<Pick<RecordedRun, 'answers' | 'readings' | 'series'>>;
  /** As far as this item and no further; absent: to the end. */
  readonly until?: string;
};

export type CaseStage = {
  readonly page: Page;
  readonly hands: KeyboardHands;
  readonly served: ServedCore;
  readonly clock: TurnedClock;
  readonly must: TestCore['must'];
  readonly begin: (options: CaseOptions) => Promise<BegunCase>;
  /** Opens a place in the app, anew. */
  readonly show: (hash: string) => Promise<void>;
  /** Opens a run at one of its steps. */
  readonly showRun: (run: BookedRun, stepKey?: string) => Promise<void>;
  readonly close: () => Promise<void>;
};

/** `hasRealPageClock`: the page keeps the browser's own clock, for measuring; what it waits for does not come due. */
export async function openCaseStage(
  startAt: string,
  { hasRealPageClock = false }: { readonly hasRealPageClock?: boolean } = {},
): Promise<CaseStage> {
  const clock = turnedClock(startAt);
  const served = await serveCore(clock);
  let browser: Browser | undefined;
  const close = async () => {
    await browser?.close();
    await served.remove();
  };
  try {
    const must = (async (name, input) => {
      const reply = await served.core().call(name, input, CLIENT);
      if (!reply.ok) throw new Error(`${name} → ${JSON.stringify(reply.error)}`);
      return reply.value;
    }) as TestCore['must'];
    const test = { must, now: clock.now, wait: clock.turn, core: served.core() };
    const crew = await setUpCrew(test);
    browser = await launchChromium();
    const context = await browser.newContext({
      locale: 'en-CA',
      timezoneId: 'America/Halifax',
      colorScheme: 'dark',
      reducedMotion: 'reduce',
      ...SCREEN,
    });
    context.setDefaultTimeout(15_000);
    if (!hasRealPageClock) await clock.installIn(context);
    const page = await context.newPage();
    const hands = keyboardHands(page);
    await page.goto(served.address());
    await signInByKeys(hands, TECHNICIAN);
    let houses = 0;
    let customerId: string | null = null;
    const show = async (hash: string) => {
      await clock.wait(0);
      // Only another hash would be the same page, which shows what it knew until it hears of what was written beside it.
      await page.goto('about:blank');
      // The tab is known already: the address of the first time has the token in it.
      await page.goto(`${new URL(served.address()).origin}/${hash}`);
    };
    return {
      page,
      hands,
      served,
      clock,
      must,
      close,
      async begin({ office: overrides = {}, notes = {}, until }) {
        houses += 1;
        // Out of the way: nothing is left half-typed, and what is written meanwhile is not asked for line by line.
        await page.goto('about:blank');
        const serial = overrides.appliance?.serial ?? `TK2044${10 + houses}`;
        await must('session.signIn', { staffId: crew.ownerId, pin: PIN });
        const house = await setUpHouse(
          test,
          {
            ...overrides,
            site: { street: `${houses} Fathom Street`, ...overrides.site },
            appliance: { ...overrides.appliance, serial },
          },
          customerId,
        );
        customerId = house.customerId;
        const office = { ...crew, ...house };
        const run = await bookAndBegin(test, office);
        const usual = readStartupNotes();
        const walkOn: BegunCase['walkOn'] = async (untilItemKey, anew = {}) => {
          const written: RecordedRun = {
            ...usual,
            answers: { ...usual.answers, serial, ...notes.answers, ...anew.answers },
            readings: { ...usual.readings, ...notes.readings, ...anew.readings },
            series: { ...usual.series, ...notes.series, ...anew.series },
          };
          await walkRun(test, office, run, written, untilItemKey);
        };
        await walkOn(until ?? null);
        return { office, run, walkOn };
      },
      show,
      async showRun(run, stepKey) {
        await show(`#/run/${run.visitId}/${run.runId}${stepKey === undefined ? '' : `/${stepKey}`}`);
        await page.locator('#run-stage-title, #run-leave-title').first().waitFor();
      },
    };
  } catch (error) {
    await close();
    throw error;
  }
}

/** One item of a sheet changed, added after another, or left out (by answering an empty list). */
export function withItems(
  sheet: ModelSheet,
  change: (item: ModelSheet['startup'][number]['items'][number]) => ModelSheet['startup'][number]['items'],
): ModelSheet {
  return { ...sheet, startup: sheet.startup.map((step) => ({ ...step, items: step.items.flatMap(change) })) };
}
