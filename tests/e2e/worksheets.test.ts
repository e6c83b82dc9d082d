/** The worksheets by keyboard, offline of any visit and with one: every one of them shown, judged by axe in both looks, and one put to use. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WORKSHEETS } from '../../renderer/worksheets/worksheets.ts';
import { PUBLISHED_EXAMPLES } from '../renderer/worksheets/publishedExamples.ts';
import type { KeyboardHands } from '../support/keyboardHands.ts';
import { goByKeys, heading, TECHNICIAN } from '../support/officeByKeys.ts';
import { type OfficeStage, openOfficeStage } from '../support/officeStage.ts';
import type { TestCore } from '../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../support/wholeJob.ts';

let stage: OfficeStage;
let test: TestCore;
let run: BookedRun;
let page: Page;
let hands: KeyboardHands;

beforeAll(async () => {
  stage = await openOfficeStage({
    person: TECHNICIAN,
    prepare: async (core, office) => {
      run = await bookAndBegin(core, office);
    },
  });
  ({ test, page, hands } = stage);
});

afterAll(() => stage?.close());

describe('worksheets', () => {
  it('works out a published example while it is typed, and keeps what was typed', async () => {
    await goByKeys(hands, 'w', 'Worksheets');
    await hands.pressButton('Cold fill and relief headroom');
    await heading(hands, 'Cold fill and relief headroom');
    await expect.poll(() => result('Cold fill')).toContain('needs Height of the system above the gauge');
    await hands.fill('Height of the system above the gauge', "30'");
    await hands.press('Enter');
    // Enter led to the next box and selected what stood in it.
    await hands.type('4 psi');
    // 30 ft at 0.433 psi/ft and 4 psi left over are 17 psi (trade training pages); the gradient here is Europe's, 2 % more.
    await expect.poll(() => result('Cold fill')).toBe('1.19bar');
    await hands.choose('Customs of', 'North America');
    await expect.poll(() => result('Cold fill')).toBe('1.17bar');

    await backToList();
    await page.getByText('Begun.').waitFor();
    await hands.pressButton('Cold fill and relief headroom');
    await expect.poll(() => result('Cold fill')).toBe('1.17bar');
  });

  it('says by the box what is wrong with what was typed', async () => {
    await hands.fill('Height of the system above the gauge', '30 psi');
    const box = page.getByLabel('Height of the system above the gauge', { exact: true });
    await page.getByText('“psi” measures something else. Type it in m, ft.').waitFor();
    expect(await box.getAttribute('aria-invalid')).toBe('true');
  });

  it('puts a reading into the visit under way, and asks before it replaces one', async () => {
    await backToList();
    await hands.pressButton('Expansion vessel: check');
    await heading(hands, 'Expansion vessel: check');
    await page.getByRole('heading', { name: 'Use in this visit' }).waitFor();
    await hands.fill('Pre-charge as set', '0,8');
    await hands.pressButton(/^Put there: Pre-charge as set 0,8 bar/);
    await page.getByText(/Pre-charge as set 0,8 bar is kept/).waitFor();
    expect(await standing('vesselPreChargeBarG')).toEqual(['0,8 bar = 0.8']);

    await hands.tabTo('Pre-charge as set', 'Shift+Tab');
    await hands.type('12 psi');
    await hands.pressButton(/^Replace …: Pre-charge as set 12 psi/);
    await page.getByText(/0,8 bar is kept there/).waitFor();
    expect(await standing('vesselPreChargeBarG')).toEqual(['0,8 bar = 0.8']);
    await hands.press('Enter');
    await page.getByText(/Pre-charge as set 12 psi is kept/).waitFor();
    expect(await standing('vesselPreChargeBarG')).toEqual(['12 psi psi = 0.827']);
  });

  it('takes over what the visit has', async () => {
    await hands.pressButton('Start afresh', 'Shift+Tab');
    await hands.pressButton('Take over what the visit has');
    await expect.poll(() => page.getByLabel('Pre-charge as set', { exact: true }).inputValue()).toBe('12 psi');
    expect(await page.getByLabel('Water in the system', { exact: true }).inputValue()).toBe('90');
  });

  it('shows every worksheet without a fault in light and dark', async () => {
    for (const { key, title } of WORKSHEETS) {
      const example = PUBLISHED_EXAMPLES.find(({ worksheet }) => worksheet === key);
      const typed = Object.entries(example?.typed ?? {}).map(([field, text]) => [field, { text }]);
      await page.evaluate(`sessionStorage.setItem(${JSON.stringify(`lightoff.worksheet.${key}`)},
        ${JSON.stringify(JSON.stringify(Object.fromEntries(typed)))})`);
      await page.goto(`${stage.origin}/#/worksheet/${key}`);
      await heading(hands, title);
      await stage.look(key, 'main');
      expect(await page.locator('.ws-results').textContent()).not.toMatch(/NaN|Infinity|undefined/);
    }
    expect(stage.problems).toEqual([]);
    expect(stage.faults).toEqual([]);
  });

  it('forgets what was typed when the person signs out', async () => {
    const kept = () =>
      page.evaluate<number>(
        `Object.keys(sessionStorage).filter((key) => key.startsWith('lightoff.worksheet.')).length`,
      );
    expect(await kept()).toBe(WORKSHEETS.length);
    await page.getByRole('button', { name: 'Switch person' }).focus();
    await hands.press('Enter');
    await heading(hands, 'Who is working?');
    await expect.poll(kept).toBe(0);
  });
});

/** By the link above the title: a shortcut rests while a box has the keyboard. */
async function backToList(): Promise<void> {
  await hands.pressButton('Worksheets', 'Shift+Tab');
  await heading(hands, 'Worksheets');
}

/** The row of a result as it stands, number and unit together. */
async function result(label: string): Promise<string> {
  const row = page.locator('.ws-results tr').filter({ has: page.getByRole('rowheader', { name: label, exact: true }) });
  return (await row.locator('td').allTextContents()).join('');
}

async function standing(quantity: string): Promise<readonly string[]> {
  const { record } = await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
  return record.readings
    .filter((one) => one.supersededById === null && one.quantity === quantity)
    .map((one) => `${one.typedText} ${one.typedUnit} = ${Number(one.valueOwn?.toFixed(3))}`);
}
