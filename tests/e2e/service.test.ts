/**
 * A service and a repair (dead at dawn, F-09) in the demo by keyboard: earlier visits beside the readings, the years as pictures and
 * tables, lockouts against the cold, a changed part and what it asks for. Axe in both looks.
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { InputOf, OperationName, OutputOf } from '../../electron/contract/index.ts';
import { DEMO_PIN } from '../../electron/demo/demoStore.ts';
import type { RecordedRun } from '../../electron/demo/recordedRun.ts';
import { scenario } from '../../electron/demo/scenario.ts';
import { buildApp } from '../../scripts/buildApp.ts';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';
import { type AccessProblem, checkAccess } from '../support/checkAccess.ts';
import { launchChromium } from '../support/chromium.ts';
import { holdAnswer } from '../support/holdAnswer.ts';
import { type KeyboardHands, keyboardHands } from '../support/keyboardHands.ts';
import { heading } from '../support/officeByKeys.ts';
import { type ServedCore, serveCore } from '../support/servedCore.ts';
import { APP_ROOT } from '../support/testCore.ts';
import { turnedClock } from '../support/turnedClock.ts';

/** The demo's dates as written, so that they need no moving. */
const clock = turnedClock('2026-03-02T13:00:00.000Z');
const SERVICED = 'EBK20475017';
const REPAIRED = 'EBK20466517';
const TECHNICIAN = 'Tobias Reyle';
const CLIENT = 'test-window';

let served: ServedCore;
let browser: Browser;
let page: Page;
let hands: KeyboardHands;
const problems: AccessProblem[] = [];

async function must<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  const reply = await served.core().call(name, input, CLIENT);
  if (!reply.ok) throw new Error(`${name} → ${JSON.stringify(reply.error)}`);
  return reply.value as never;
}

/** Booked, begun, and walked through its first steps; the rest is done by hand in the browser. */
async function begin(serial: string, kind: 'service' | 'repair', upTo: string) {
  const { people } = await must('app.status', {});
  const staffId = people.find(({ name }) => name === TECHNICIAN)?.staffId ?? '';
  const { rows } = await must('appliances.list', { query: serial });
  const applianceId = rows[0]?.applianceId ?? '';
  const { jobId } = await must('jobs.open', { applianceId, kind, note: null });
  const { visitId } = await must('visits.book', {
    jobIds: [jobId],
    plannedOn: '2026-03-02',
    plannedFrom: '09:00',
    plannedTo: '12:00',
    durationMin: 120,
    crew: [{ staffId, role: 'licensed' }],
    isPencilled: false,
    note: null,
  });
  const { runs } = await must('visits.begin', { visitId });
  const runId = runs[0]?.runId ?? '';
  const { sheet } = await must('visits.getRun', { visitId, runId });
  const notes = notesOf(serial);
  const instruments = await must('instruments.list', {});
  const analyserId = instruments.find((one) => one.kind === 'analyser' && one.isInDate)?.instrumentId ?? null;
  for (const step of (kind === 'repair' ? sheet.repair : sheet.service) ?? []) {
    if (step.key === upTo) break;
    const at = { visitId, runId, stepKey: step.key };
    await must('visits.openStep', at);
    for (const item of step.items) {
      const here = { ...at, itemKey: item.key };
      if (item.kind === 'sign-off')
        await must('visits.signOff', { ...here, name: TECHNICIAN, signatureAttachmentId: null });
      else if (item.kind === 'read')
        await must('visits.recordReading', {
          ...here,
          quantity: item.quantity,
          sample: 1,
          typedText: '0',
          typedUnit: 'ppm',
          notMeasuredReason: null,
          instrumentId: analyserId,
          measuredById: null,
        });
      else await must('visits.answer', { ...here, value: String(notes.answers[item.key]), reason: null });
    }
  }
  return { applianceId, visitId, runId };
}

function notesOf(serial: string): RecordedRun {
  const data = scenario.parse(JSON.parse(readFileSync(join(APP_ROOT, 'assets/demo/scenario.json'), 'utf8')));
  const notes = data.visits.findLast((visit) => visit.kind === 'service' && visit.notes?.serial === serial)?.notes;
  if (notes == null) throw new Error(`the demo has no service of ${serial}`);
  return notes;
}

/** Opens a place anew: what the page still waited for, after the store had it, cannot lead it elsewhere. */
async function open(hash: string): Promise<void> {
  await page.goto('about:blank');
  await page.goto(`${new URL(served.address()).origin}/${hash}`);
}

/** What was saved last may still lead the keyboard on when the store has it already: then it is pressed again. */
async function pressUntil(button: Locator, shown: Locator): Promise<void> {
  for (let tries = 0; tries < 10 && !(await shown.isVisible()); tries += 1) {
    await button.focus();
    await hands.press('Enter');
    await shown.waitFor({ timeout: 2000 }).catch(() => undefined);
  }
  await shown.waitFor();
}

async function look(name: string): Promise<void> {
  const folder = process.env['LIGHTOFF_SCREENSHOTS'];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    problems.push(...(await checkAccess(page, `${name}, ${colorScheme}`)));
    if (folder === undefined) continue;
    mkdirSync(folder, { recursive: true });
    await page.screenshot({ path: join(folder, `${name}-${colorScheme}.png`), fullPage: true });
  }
  await page.emulateMedia({ colorScheme: 'light' });
}

beforeAll(async () => {
  if (isBuildNeeded(APP_ROOT)) await buildApp(APP_ROOT, 'warn');
  served = await serveCore(clock);
  await must('app.openDemo', {});
  const { people } = await must('app.status', {});
  const staffId = people.find(({ name }) => name === TECHNICIAN)?.staffId ?? '';
  await must('session.signIn', { staffId, pin: DEMO_PIN });
  browser = await launchChromium();
  const context = await browser.newContext({
    locale: 'en-CA',
    timezoneId: 'America/Halifax',
    viewport: { width: 1366, height: 768 },
  });
  context.setDefaultTimeout(20_000);
  await clock.installIn(context);
  page = await context.newPage();
  hands = keyboardHands(page);
  await page.goto(served.address());
  await heading(hands, 'Who is working?');
  if ((await page.getByRole('button', { name: TECHNICIAN, pressed: true }).count()) === 0)
    await hands.pressButton(new RegExp(`^${TECHNICIAN}`), 'Shift+Tab');
  await page.locator('form input:focus').waitFor();
  await hands.type(DEMO_PIN);
  await hands.press('Enter');
  await page.getByRole('button', { name: 'Switch person' }).waitFor();
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await served?.remove();
});

describe('a yearly service', () => {
  it('has the startup and last year beside what is read now, and what is due', async () => {
    const run = await begin(SERVICED, 'service', 'before-firing');
    await open(`#/visit/${run.visitId}`);
    await page.getByText(/Next service due/).waitFor();
    await open(`#/run/${run.visitId}/${run.runId}/before-firing`);
    const box = page.locator('[data-card="service-cold-pressure"] input').first();
    await pressUntil(page.getByRole('button', { name: /^\w+ Pressure as found, cold/ }), box);
    await page.locator('[data-card] input:focus').waitFor();
    await hands.type('0.6');
    await hands.press('Enter');
    const side = page.getByRole('region', { name: 'Against earlier visits' });
    for (const words of [/startup 18 Feb 2024/, /service 22 Feb 2026/, /Pressure, cold/, /▼ lower/])
      await expect.poll(() => side.textContent()).toMatch(words);
    await look('service-run');
  }, 60_000);

  it('asks once which analyser it was, and keeps the number with the answer', async () => {
    const run = await begin(SERVICED, 'service', 'before-firing');
    await open(`#/run/${run.visitId}/${run.runId}/arrival`);
    await pressUntil(
      page.getByRole('button', { name: /CO in the room/ }),
      page.locator('[data-card*="room-co"] input:focus'),
    );
    await hands.type('1');
    await hands.press('Enter');
    await page.getByText('Read with which instrument?').waitFor();
    // Typed on without looking: the question stays.
    await hands.type('7');
    await hands.press('Enter');
    await page.getByText('“7” is not taken').waitFor();
    await hands.press('Alt+1');
    const roomCo = async () =>
      (await must('visits.getRun', { visitId: run.visitId, runId: run.runId })).record.readings
        .filter((one) => one.typedText === '1')
        .map((one) => one.instrumentId);
    await expect.poll(roomCo).toHaveLength(1);
    const instruments = await must('instruments.list', {});
    const first = instruments.find((one) => one.kind === 'analyser')?.instrumentId;
    expect(await roomCo()).toEqual([first]);
    // Read once more, and the same digits: that is a reading of its own.
    const roomCoLine = page.getByRole('button', { name: /CO in the room/ });
    await pressUntil(page.getByRole('button', { name: /^1\. Arrival/ }), roomCoLine);
    await pressUntil(roomCoLine, page.locator('[data-card*="room-co"] input:focus'));
    await hands.type('1');
    await hands.press('Enter');
    await expect.poll(roomCo).toEqual([first, first]);
  }, 60_000);

  it('has the years as pictures, each with its table', async () => {
    const { rows } = await must('appliances.list', { query: SERVICED });
    await open(`#/appliances/${rows[0]?.applianceId}/history`);
    await heading(hands, /^History of /);
    const table = page.getByRole('table', { name: /^CO₂, high fire.* over the years$/ });
    await table.waitFor();
    expect(await table.getByRole('row').count()).toBe(4);
    await look('history-trends');
    await hands.choose('Show', 'Water quality');
    await page.getByRole('table', { name: 'pH over the years' }).waitFor();
  }, 60_000);
});

describe('F-09: perfect at noon, dead at dawn', () => {
  it('lays three lockouts against the cold and sends whoever looks to the supply first', async () => {
    const run = await begin(REPAIRED, 'repair', 'fault');
    await open(`#/run/${run.visitId}/${run.runId}/fault`);
    await page.locator('[data-card="symptoms"] input:focus').waitFor();
    await hands.type('dead most mornings, runs by noon');
    await hands.press('Enter');
    await page.locator('[data-card="fault-codes"] input:focus').waitFor();
    await hands.type('E5');
    await hands.press('Enter');
    await page.locator('[data-card="lockout-list"] [data-main]:focus').waitFor();
    const lockouts = async () =>
      (await must('visits.getRun', { visitId: run.visitId, runId: run.runId })).record.lockouts ?? [];
    const dayBox = page.getByLabel('Day', { exact: true });
    await dayBox.focus();
    for (const [day, time, celsius] of [
      ['26 Feb 2026', '07:20', '-19'],
      ['27 Feb 2026', '07:35', '-21'],
    ] as const) {
      // Today's day is selected there, and typed over.
      await hands.type(day);
      await hands.fill('Time', time);
      await hands.fill(/^Outside/, celsius);
      await hands.press('Enter');
      await page.getByText(new RegExp(`${day}, ${time}`)).waitFor();
      // The line is on the list, and the keyboard at the beginning of the next one.
      await dayBox.and(page.locator(':focus')).waitFor();
    }
    // Typed on before the list has the line: it is the beginning of the next one.
    await hands.type('28 Feb 2026');
    await hands.fill('Time', '07:30');
    await hands.fill(/^Outside/, '-19');
    const letGo = await holdAnswer(page, 'visits.addLockout');
    await hands.press('Enter');
    await expect.poll(lockouts).toHaveLength(3);
    await hands.type('1 Mar 2026');
    await letGo();
    await expect.poll(() => dayBox.inputValue()).toBe('1 Mar 2026');
    const findings = page.getByLabel('Findings of this step');
    await expect.poll(() => findings.textContent()).toMatch(/gas supply first/);
    await expect.poll(() => findings.textContent()).toMatch(/between 07:20 and 07:35, at −21 °C to −19 °C outside/);
    await look('repair-fault');
    expect(await lockouts()).toHaveLength(3);
  }, 60_000);

  it('no screen has a serious or critical finding of axe', () => {
    expect(problems).toEqual([]);
  });
});
