/** A dispatcher's week by keyboard alone: waiting jobs put on the board, moved, taken back; the same by mouse; axe in both looks. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { holdAnswer } from '../support/holdAnswer.ts';
import type { KeyboardHands } from '../support/keyboardHands.ts';
import { goByKeys, OWNER, TECHNICIAN } from '../support/officeByKeys.ts';
import type { Office } from '../support/officeScenario.ts';
import { type OfficeStage, openOfficeStage } from '../support/officeStage.ts';
import type { TestCore } from '../support/testCore.ts';

/** A Monday, 13:00 UTC: nine in the morning in Halifax. */
const NOW = '2026-03-02T13:00:00.000Z';
const WEEK = { from: '2026-03-02', to: '2026-03-08' };

let stage: OfficeStage;
let test: TestCore;
let office: Office;
let page: Page;
let hands: KeyboardHands;

beforeAll(async () => {
  stage = await openOfficeStage({ now: NOW, person: OWNER, prepare: hoursAndWaitingWork });
  ({ test, office, page, hands } = stage);
});

afterAll(() => stage?.close());

async function hoursAndWaitingWork(core: TestCore, { technicianId, helperId, applianceId }: Office): Promise<void> {
  for (const staffId of [technicianId, helperId])
    await core.must('staff.setHours', {
      staffId,
      hours: [1, 2, 3, 4, 5].map((weekday) => ({
        weekday,
        fromMin: 480,
        toMin: 1020,
        breakFromMin: null,
        breakToMin: null,
      })),
    });
  for (const kind of ['service', 'repair', 'follow-up'] as const)
    await core.must('jobs.open', { applianceId, kind, note: null });
}

describe('the board', () => {
  it('takes a week of waiting work by keyboard alone', async () => {
    await goByKeys(hands, 'o', 'Week of 2 Mar 2026');
    await page.getByRole('heading', { name: 'Without a day (3)' }).waitFor();

    // The first of the list begins where it fits, with the technician who has a licence: half an hour later, on Tuesday.
    await pickUp(/^Annual service: Lowri Kestrel/);
    await press('ArrowRight', 'ArrowRight', 'PageDown', 'Enter');
    await page.getByRole('heading', { name: 'Without a day (2)' }).waitFor();
    await expect.poll(placed).toEqual([['2026-03-03', 510, TECHNICIAN]]);

    await pickUp(/^Repair: Lowri Kestrel/);
    await press('PageDown', 'PageDown', 'Enter');
    await page.getByRole('heading', { name: 'Without a day (1)' }).waitFor();
    await pickUp(/^Follow-up: Lowri Kestrel/);
    await press('PageDown', 'PageDown', 'PageDown', 'Shift+ArrowRight', 'Enter');
    await page
      .getByRole('heading', { name: 'Everything has a day' })
      .or(page.getByText('Everything has a day'))
      .waitFor();
    await expect.poll(placed).toEqual([
      ['2026-03-03', 510, TECHNICIAN],
      ['2026-03-04', 480, TECHNICIAN],
      ['2026-03-05', 540, TECHNICIAN],
    ]);
  });

  it('moves a visit by keys, says what does not fit before it is put down, and takes it back', async () => {
    // The keyboard is on the visit put down last.
    await focusedVisit(/^09:00 Lowri Kestrel .*; Thu 5 Mar 2026/);
    await hands.press('ArrowLeft');
    await focusedVisit(/^08:00 Lowri Kestrel .*; Wed 4 Mar 2026/);
    await hands.press('Space');
    await press('PageUp', 'ArrowRight', 'ArrowRight', 'ArrowRight');
    await page.locator('.lo-board-ghost').getByText('at the same time as Lowri Kestrel').waitFor();
    await hands.press('Escape');
    await focusedVisit(/^08:00 Lowri Kestrel .*; Wed 4 Mar 2026/);

    await hands.press('Space');
    await press('PageDown', 'PageDown', 'Enter');
    await focusedVisit(/^08:00 Lowri Kestrel .*; Fri 6 Mar 2026/);
    await hands.press('u');
    await page.getByText(/^Taken back: Moved Lowri Kestrel/).waitFor();
    await expect.poll(placed).toContainEqual(['2026-03-04', 480, TECHNICIAN]);
  });

  it('refuses somebody without a licence in words, and changes nothing', async () => {
    const before = await placed();
    await focusedVisit(/^08:00 Lowri Kestrel .*; Wed 4 Mar 2026/);
    await hands.press('Space');
    await press('ArrowUp', 'Enter');
    await page.getByText(/Ines Calloway may not do gas work here on 4 Mar 2026: no licence on file/).waitFor();
    expect(await placed()).toEqual(before);
  });

  it('opens the details of a visit, and moves it by typing', async () => {
    await focusedVisit(/^08:00 Lowri Kestrel .*; Wed 4 Mar 2026/);
    await hands.press('Enter');
    await page.getByRole('heading', { name: 'Lowri Kestrel' }).waitFor();
    await page.getByText('Who may do it on 4 Mar 2026').waitFor();
    await hands.tabTo('Start');
    await hands.press('Control+A');
    await hands.type('10:15');
    // The answer comes after the details were closed: they stay closed.
    const letAnswer = await holdAnswer(page, 'visits.place');
    await hands.press('Enter');
    await expect.poll(placed).toContainEqual(['2026-03-04', 615, TECHNICIAN]);
    await hands.pressButton('Close', 'Shift+Tab');
    await page.getByText('Who may do it on 4 Mar 2026').waitFor({ state: 'hidden' });
    await letAnswer();
    await page
      .getByRole('status')
      .getByText(/^Moved Lowri Kestrel/)
      .waitFor();
    expect(await page.getByText('Who may do it on 4 Mar 2026').count()).toBe(0);
  });

  it('shows all days of the week at once, and takes a visit to another day with the mouse at the time it had', async () => {
    await expect.poll(() => page.locator('.lo-board-day-head').count()).toBe(5);
    const [board, last] = await Promise.all([
      page.locator('.lo-board').boundingBox(),
      page.locator('.lo-board-day-head').nth(4).boundingBox(),
    ]);
    if (board === null || last === null) throw new Error('no board in sight');
    expect(last.x + last.width).toBeLessThanOrEqual(board.x + board.width);
    await dragBy(/^09:00 Lowri Kestrel .*; Thu 5 Mar 2026/, last.width + 5);
    await focusedVisit(/^09:00 Lowri Kestrel .*; Fri 6 Mar 2026/);
    await hands.press('u');
    await focusedVisit(/^09:00 Lowri Kestrel .*; Thu 5 Mar 2026/);
  });

  it('takes a visit along with the mouse by the quarter of an hour where there is room for it', async () => {
    await page.getByText('Week by hours').click();
    await page.getByText('Thu 5 Mar 2026').scrollIntoViewIfNeeded();
    // An hour is thirty pixels there.
    await dragBy(/^09:00 Lowri Kestrel .*; Thu 5 Mar 2026/, 30);
    await expect.poll(placed).toContainEqual(['2026-03-05', 600, TECHNICIAN]);
    // The keyboard is where the mouse put it down.
    await focusedVisit(/^10:00 Lowri Kestrel .*; Thu 5 Mar 2026/);
    // A key leads back from the choice of view.
    await page.getByText('Week', { exact: true }).click();
    await hands.press('b');
    await focusedVisit(/^10:00 Lowri Kestrel .*; Thu 5 Mar 2026/);
  });

  it('has nothing serious for axe, in light and dark, with details and list open', async () => {
    await hands.press('ArrowLeft');
    await focusedVisit(/^10:15 Lowri Kestrel .*; Wed 4 Mar 2026/);
    await hands.press('Enter');
    await page.getByRole('heading', { name: 'Lowri Kestrel' }).waitFor();
    await stage.look('board');
    await page.getByText('Map', { exact: true }).click();
    await page.getByRole('img', { name: /^1 site seen from above/ }).waitFor();
    const visits = page.getByRole('region', { name: 'The visits of the map, in their order' }).getByRole('link');
    await visits.first().focus();
    await hands.press('ArrowDown');
    await visits.nth(1).and(page.locator(':focus')).waitFor();
    await stage.look('map', '.lo-map-screen');
    await page.getByText('Week', { exact: true }).click();
    await goByKeys(hands, 'h', 'On the phone');
    await stage.look('phone');
    expect(stage.problems).toEqual([]);
    expect(stage.faults).toEqual([]);
  });

  it('takes a call: caller, appliance, a visit booked and promised', async () => {
    // The only one found is opened, and with one appliance the keyboard waits at what they want.
    await hands.type('kestr');
    await hands.press('Enter');
    await page.getByRole('heading', { name: 'What do they want?' }).waitFor();
    await expect.poll(focusedText).toBe('Annual service');
    await hands.pressButton('Repair');
    await page.getByRole('heading', { name: 'When?' }).waitFor();
    await page.getByRole('list', { name: 'Times that fit, best first' }).and(page.locator(':focus')).waitFor();
    await hands.fill('Day', '9 Mar 2026');
    await hands.fill('Start', '14');
    await hands.press('Enter');
    await page.getByText(/^Booked: Mon 9 Mar 2026, arrival 14:00–16:00, Tobias Reyle/).waitFor();
    const { visits } = await test.must('board.get', { from: '2026-03-09', to: '2026-03-09' });
    expect(visits).toMatchObject([{ startMin: 840, promisedOn: '2026-03-09', state: 'planned' }]);
    // A link inside a screen leads the keyboard to the beginning of the next screen, and does not take it along.
    await expect.poll(focusedText).toBe('Open the visit');
    await hands.press('Enter');
    await page.getByRole('heading', { level: 1, name: /^Lowri Kestrel/ }).waitFor();
    await expect.poll(() => page.evaluate<string>('document.activeElement?.id ?? ""')).toBe('main');
    expect(stage.faults).toEqual([]);
  });
});

describe('the planner and its slots', () => {
  it('offers times that fit on the phone, and books one with a press', async () => {
    await goByKeys(hands, 'h', 'On the phone');
    await hands.type('kestr');
    await hands.press('Enter');
    await page.getByRole('heading', { name: 'What do they want?' }).waitFor();
    await hands.pressButton('Follow-up');
    await page.getByRole('list', { name: 'Times that fit, best first' }).waitFor();
    await hands.pressButton(/, arrival .*Tobias Reyle/);
    await page.getByText(/^Booked: .*Tobias Reyle/).waitFor();
  });

  it('proposes a week, says why, and changes nothing until it is accepted', async () => {
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'repair', note: null });
    const before = await test.must('visits.list', { from: '2026-03-09', to: '2026-03-13' });
    await goByKeys(hands, 'n', 'Plan the days');
    // Stopped below: on a busy computer a short search would be over before.
    await hands.choose('Time to search', 'a minute');
    await hands.pressButton('Propose a plan');
    await page.getByText('What it changes (1)').waitFor();
    expect(await test.must('visits.list', { from: '2026-03-09', to: '2026-03-13' })).toEqual(before);
    await hands.pressButton('Stop searching');
    await page.getByText(/^(Stopped|Done)/).waitFor();
    await stage.look('planning');
    expect(stage.problems).toEqual([]);
    await hands.pressButton('Accept all of it');
    await page.getByText('Accepted: 1 visit booked, 0 moved.').waitFor();
    const after = await test.must('visits.list', { from: '2026-03-09', to: '2026-03-13' });
    expect(after).toHaveLength(before.length + 1);
    expect((await test.must('jobs.list', { unplannedOnly: true })).map((job) => job.jobId)).not.toContain(jobId);
    expect(stage.faults).toEqual([]);
  });
});

async function pickUp(name: RegExp): Promise<void> {
  await page.getByRole('button', { name }).waitFor();
  await hands.press('w');
  await page.locator('.lo-board-waiting button:focus').waitFor();
  const rows = await page.locator('.lo-board-waiting button').count();
  for (let row = 0; row < rows && !name.test(await focusedText()); row += 1) await hands.press('ArrowDown');
  await hands.press('Enter');
  await page.locator('.lo-board-ghost:focus').waitFor();
}

function focusedText(): Promise<string> {
  return page.evaluate<string>('document.activeElement?.textContent ?? ""');
}

async function dragBy(name: RegExp, right: number): Promise<void> {
  const box = await page.getByRole('button', { name }).boundingBox();
  if (box === null) throw new Error('the visit is not in sight');
  await page.mouse.move(box.x + 8, box.y + 12);
  await page.mouse.down();
  await page.mouse.move(box.x + 20, box.y + 14);
  await page.mouse.move(box.x + 8 + right, box.y + 14);
  await page.locator('.lo-board-ghost').waitFor();
  // It follows the pointer with the next frame.
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
  await page.mouse.up();
}

async function press(...keys: readonly string[]): Promise<void> {
  for (const key of keys) await hands.press(key);
}

async function focusedVisit(name: RegExp): Promise<void> {
  await expect
    .poll(() => page.evaluate<string>('document.activeElement?.getAttribute("aria-label") ?? ""'))
    .toMatch(name);
}

async function placed(): Promise<readonly (readonly [string, number | null, string | undefined])[]> {
  const { visits } = await test.must('board.get', WEEK);
  return visits.map(({ plannedOn, startMin, crew }) => [plannedOn, startMin, crew[0]?.name] as const);
}

describe('field case F-10: a new load on an old meter', () => {
  it('warns while the gas supply is typed, and again where the startup’s readiness is asked', async () => {
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'startup', note: null });
    await page.evaluate(`window.location.hash = '#/sites/${office.siteId}/gas'`);
    await page.getByRole('heading', { name: 'Gas supply', level: 1 }).waitFor();
    // A field that the Tab key comes to is typed over.
    await hands.fill('Capacity per hour', '250 ft³');
    await hands.fill('Heating value, gross', '1000 Btu/ft³');
    await hands.fill('Appliance 1', 'water heater');
    await hands.fill('Input', '200000 Btu/h');
    for (const [index, input] of ['50000 Btu/h', '45000 Btu/h', '40000 Btu/h', ''].entries()) {
      await hands.pressButton('Add an appliance');
      await hands.fill(`Appliance ${index + 2}`, input === '' ? 'dryer' : `burner ${index + 2}`);
      await hands.fill('Input', input);
    }
    const warned = page.getByText(/At least 98\.2 kW connected.*134 %/);
    await warned.waitFor();
    await hands.press('Enter');
    await page.getByText('dryer is connected, its input is not known.').waitFor();
    await page.evaluate(`window.location.hash = '#/jobs/${jobId}'`);
    await page.getByText('More connected than the meter can give').waitFor();
    await warned.waitFor();
    await page.getByText('Not in the sum, input not known: dryer.').waitFor();
    await page.getByText(/Call the utility before the visit\. On site the dynamic pressure must be read/).waitFor();
    expect(stage.faults).toEqual([]);
  });
});
