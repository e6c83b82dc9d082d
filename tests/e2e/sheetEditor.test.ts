/** A new revision of a sheet, written by keyboard: kept field by field, wrong fields named and led to, previewed, published. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { OWNER } from '../support/officeByKeys.ts';
import { type OfficeStage, openOfficeStage } from '../support/officeStage.ts';

const SHEET_ID = 'general-practice-natural-gas';
let stage: OfficeStage;

beforeAll(async () => {
  stage = await openOfficeStage({ person: OWNER });
});

afterAll(() => stage?.close());

describe('the sheet editor', () => {
  it('keeps what is typed, names what is wrong, leads to it, takes back, previews and publishes', async () => {
    const { test, page, hands } = stage;
    const before = await test.must('sheets.get', { sheetId: SHEET_ID, revision: null });
    await page.goto(`${stage.origin}/#/sheets/${SHEET_ID}`);
    await page.getByRole('button', { name: 'New revision of this sheet' }).waitFor();
    await hands.pressButton('New revision of this sheet');
    await page.getByText(/^A draft, begun from/).waitFor();

    await hands.pressButton('Firing points and steadiness');
    await hands.tabTo('Clocked input may differ from the rating by (%)');
    await hands.press('Control+a');
    await hands.type('about ten');
    await page.getByText('Not a number.', { exact: true }).waitFor();
    await expect.poll(() => page.getByRole('button', { name: 'Publish' }).isDisabled()).toBe(true);

    // From another part, the list of what is wrong leads back to the field.
    await hands.pressButton('Limits', 'Shift+Tab');
    await page.getByRole('heading', { name: 'Limits' }).waitFor();
    await stage.look('sheet-editor-limits', 'main');
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
    // The part before has entries too.
    await page.getByRole('heading', { name: 'Startup, step by step' }).waitFor();
    const firstStep = page.locator('.sheet-list > ol > li').first();
    await firstStep.locator('[data-button="open"]').focus();
    await hands.press('Enter');
    await firstStep.locator('.sheet-entry-body [data-button="open"]').first().focus();
    await hands.press('Enter');
    await stage.look('sheet-editor-step', 'main');

    await hands.pressButton('Preview', 'Shift+Tab');
    await page.locator('.sheet-preview .run-card').first().waitFor();
    await stage.look('sheet-editor-preview', 'main');

    await hands.pressButton('Publish', 'Shift+Tab');
    await page.getByRole('button', { name: 'New revision of this sheet' }).waitFor();
    const published = await test.must('sheets.get', { sheetId: SHEET_ID, revision: null });
    expect(published.inputTolerancePct).toBe(9);
    expect(published.limits).toEqual(before.limits);
    expect(before.inputTolerancePct).not.toBe(9);
    expect(stage.problems).toEqual([]);
    expect(stage.faults).toEqual([]);
  }, 60_000);
});
