/** The keyboard in the office's forms: what is pressed may go from under it, and what was typed goes along to the next screen. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { KeyboardHands } from '../support/keyboardHands.ts';
import { heading, OWNER } from '../support/officeByKeys.ts';
import { type OfficeStage, openOfficeStage } from '../support/officeStage.ts';

let stage: OfficeStage;
let page: Page;
let hands: KeyboardHands;

beforeAll(async () => {
  stage = await openOfficeStage({ now: '2026-03-02T13:00:00.000Z', person: OWNER });
  ({ page, hands } = stage);
});

afterAll(() => stage?.close());

const focused = (label: string) => page.getByLabel(label, { exact: true }).and(page.locator(':focus')).waitFor();

describe('the keyboard in a form', () => {
  it('should not be lost with the row that is taken out', async () => {
    await page.evaluate(`window.location.hash = '#/sites/${stage.office.siteId}/edit'`);
    await heading(hands, 'Edit site');
    const emitters = page.getByLabel(/^Emitter \d$/);
    await emitters.first().waitFor();
    const rows = await emitters.count();
    for (const more of [1, 2]) {
      await hands.pressButton('Add an emitter');
      await focused(`Emitter ${rows + more}`);
    }
    await hands.pressButton(`Remove emitter ${rows + 1}`, 'Shift+Tab');
    await focused('Rated output');
    expect(await emitters.count()).toBe(rows + 1);
  });

  it('should not be lost with a suggestion that is taken over', async () => {
    await page.evaluate(`window.location.hash = '#/sites/${stage.office.siteId}/gas'`);
    await heading(hands, 'Gas supply');
    await hands.tabTo('Heating value, gross');
    await hands.press('Delete');
    await hands.pressButton(/^Not known: take the usual/, 'Shift+Tab');
    await focused('Heating value, gross');
  });

  it('should take along whom the caller was searched by', async () => {
    await page.evaluate(`window.location.hash = '#/phone'`);
    await heading(hands, 'On the phone');
    await hands.type('Odalys Fontclair');
    await page.getByText('Nobody found for “Odalys Fontclair”').waitFor();
    await hands.pressButton('New customer');
    await heading(hands, 'New customer');
    expect(await page.getByLabel('Name').inputValue()).toBe('Odalys Fontclair');
    expect(stage.faults).toEqual([]);
  });
});
