/** Deadlines, services due and an appliance's cover by keyboard: narrowed, led on from, booked; axe in both looks. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { KeyboardHands } from '../support/keyboardHands.ts';
import { importMakersSheets } from '../support/manyAppliances.ts';
import { goByKeys, OWNER } from '../support/officeByKeys.ts';
import { type Office, PIN } from '../support/officeScenario.ts';
import { type OfficeStage, openOfficeStage } from '../support/officeStage.ts';
import type { TestCore } from '../support/testCore.ts';
import { bookAndBegin } from '../support/wholeJob.ts';

let stage: OfficeStage;
let test: TestCore;
let page: Page;
let hands: KeyboardHands;

beforeAll(async () => {
  stage = await openOfficeStage({ now: '2026-03-02T13:00:00.000Z', person: OWNER, prepare: boilersWithDues });
  ({ test, page, hands } = stage);
});

afterAll(() => stage?.close());

describe('what falls due, on screen', () => {
  it('shows last days with how they came about, and narrows to one maker', async () => {
    await goByKeys(hands, 'l', 'Deadlines');
    await page.getByText('3 days left').waitFor();
    await page
      .getByText('30 days from installation on 3 Feb 2026, counting the day after as day 1: Thu 5 Mar 2026.')
      .waitFor();
    await stage.look('deadlines');
    await hands.choose('Show', 'late');
    await page.getByText('submit it anyway and keep the proof').waitFor();
    await expect.poll(() => page.getByText('QC3003').count()).toBe(0);
    await hands.choose('Show', 'everything to submit');
    await hands.choose('Maker', 'Invented maker (3)');
    await hands.pressButton('Work all days out again', 'Shift+Tab');
    await page.getByRole('button', { name: 'Work all days out again' }).waitFor();
    await page.getByText('3 days left').waitFor();
  });

  it('shows an appliance’s terms, its state words and what is missing', async () => {
    await hands.tabTo('Invented maker T 24, QC3003');
    await hands.press('Enter');
    await page.getByRole('heading', { name: 'Cover, as the maker states it' }).waitFor();
    await page.getByText('No water reading on record').first().waitFor();
    expect(await page.getByText('not evidenced').count()).toBe(3);
    await stage.look('cover');
  });

  it('groups services into rounds and leads from a line to the booking', async () => {
    await goByKeys(hands, 'v', 'Service due');
    await page.getByText('60 days before').waitFor();
    await stage.look('service-due');
    await hands.pressButton('Book the service of QC1001');
    await page.getByRole('heading', { level: 1, name: 'Annual service: Invented maker T 24' }).waitFor();
  });

  it('makes a letter for whom it may, and notes that it was sent', async () => {
    const [row] = (await test.must('reminders.list', {})).rows;
    if (row === undefined) throw new Error('no reminder stands');
    await test.must('customers.recordConsent', {
      partyId: row.partyId,
      purpose: 'service-due',
      channel: 'letter',
      granted: true,
      on: '2026-03-01',
      source: 'on the phone',
    });
    await goByKeys(hands, 'v', 'Service due');
    await hands.pressButton('Letters and e-mails');
    await page.getByRole('heading', { level: 1, name: 'Letters and e-mails' }).waitFor();
    await page.getByText('Annual service of your Invented maker T 24').first().waitFor();
    await stage.look('messages');
    const [letter] = await Promise.all([page.waitForEvent('download'), hands.pressButton(/^Prepare \d+ messages?$/)]);
    expect(letter.suggestedFilename()).toBe('reminders-2026-03-02-letters.pdf');
    await page.getByText(/prepared in reminders-2026-03-02-letters\.pdf/).waitFor();
    await hands.pressButton('Note today, Lowri Kestrel');
    await page.getByText('sent 2 Mar 2026').waitFor();
  });

  it('builds the packets of those chosen in one go and saves them together', async () => {
    await goByKeys(hands, 'l', 'Deadlines');
    await hands.tabTo('Choose Invented maker T 24, TK204417');
    await hands.press('Space');
    await hands.tabTo('As drafts', 'Shift+Tab');
    await hands.press('Space');
    await hands.pressButton('Build 1 packet');
    await page.getByText('1 of 1 built. Finished.').waitFor();
    await stage.look('packets');
    const [zip] = await Promise.all([page.waitForEvent('download'), hands.pressButton('Save as one ZIP')]);
    expect(zip.suggestedFilename()).toBe('packets-2026-03-02.zip');
  });

  it('takes a notice down, finds whom it is about, and writes to them', async () => {
    await goByKeys(hands, 'u', 'Notices');
    await hands.pressButton('Take a notice down');
    await hands.fill('What it is about', 'Trap may leak flue gas');
    await hands.fill('Who issued it', 'the maker');
    await hands.fill('Maker', 'Invented maker');
    await hands.fill('Serial numbers', 'QC1000 to QC1999');
    await hands.fill('What it asks for', 'Do not use the boiler until the trap has been replaced.');
    await hands.pressButton('Save');
    await page.getByText('1 meant, 0 can’t be told; 0 told').waitFor();
    await page.getByText('Safety notice for your Invented maker T 24').waitFor();
    await stage.look('notice');
    const [letter] = await Promise.all([page.waitForEvent('download'), hands.pressButton('Prepare 1 message')]);
    expect(letter.suggestedFilename()).toBe('notice-2026-03-02-letters.pdf');
    await page.getByText('1 meant, 0 can’t be told; 1 told').waitFor();
    // A question that takes a button's place takes the keyboard too, answers nothing by itself, and gives it back.
    await page.getByRole('button', { name: 'Close the notice' }).focus();
    await hands.press('Enter');
    await page.getByRole('button', { name: 'Close it' }).waitFor();
    for (const key of ['Enter', 'Tab', 'Tab', 'Enter']) await hands.press(key);
    await expect.poll(() => page.evaluate('document.activeElement?.textContent')).toBe('Close the notice');
  });

  it('F-17: finds the boiler of a claim by a serial typed anyhow, and saves one file for it', async () => {
    const { rows } = await test.must('appliances.list', { query: 'QC1001' });
    const refused = { isWithdrawn: false, currency: 'USD', partName: null, claimNumber: null, note: null } as const;
    await test.must('claims.open', {
      applianceId: rows[0]?.applianceId ?? '',
      claim: {
        ...refused,
        partNumber: 'P-77',
        openedOn: '2026-02-20',
        sentOn: '2026-02-21',
        partReturnedOn: null,
        decidedOn: '2026-03-01',
        partsMinorUnits: 38_500,
        partsOutcome: 'granted',
        partsGrantedMinorUnits: 38_500,
        labourMinorUnits: 75_500,
        labourOutcome: 'refused',
        labourGrantedMinorUnits: null,
        refusedBecause: 'see the terms of installation',
      },
    });
    await goByKeys(hands, 'a', 'Appliances');
    await hands.press('/');
    await hands.type('q c-IOO1');
    await page.getByRole('cell', { name: 'QC3003' }).waitFor({ state: 'detached' });
    await hands.pressButton('Invented maker T 24');
    await hands.pressButton('History and claims');
    await page.getByText('see the terms of installation').first().waitFor();
    const [file] = await Promise.all([page.waitForEvent('download'), hands.pressButton('Claim file for P-77')]);
    expect(file.suggestedFilename()).toBe('claim-file-QC1001.pdf');
    expect(await page.getByText(/\b(void|covered)\b/i).count()).toBe(0);
  });

  it('writes a service agreement, sees the day it asks for, and ends it', async () => {
    await hands.pressButton('The appliance');
    await hands.pressButton('Write an agreement');
    await hands.fill('Service every … months', '6');
    await hands.fill('From', '1 Mar 2026');
    await hands.press('Enter');
    const reason = 'the start of the service agreement on 1 Mar 2026';
    await page.getByText(reason).waitFor();
    await stage.look('agreement');
    await hands.pressButton('End it: the agreement from 1 Mar 2026');
    await hands.fill('Last day of the agreement from 1 Mar 2026', '31 Aug 2026');
    await hands.press('Enter');
    await page.getByRole('button', { name: 'Change the end: the agreement from 1 Mar 2026' }).waitFor();
    await page.getByText(reason).waitFor({ state: 'detached' });
  });

  it('has nothing for axe, and raised no error', () => {
    expect(stage.problems).toEqual([]);
    expect(stage.faults).toEqual([]);
  });
});

async function boilersWithDues(core: TestCore, office: Office): Promise<void> {
  await importMakersSheets(core);
  const { appliance } = await core.must('appliances.get', { applianceId: office.applianceId });
  const add = (serial: string, sheetId: string, installedOn: string, startedOn: string) =>
    core.must('appliances.create', {
      siteId: office.siteId,
      appliance: { ...appliance, serial, sheetId },
      position: null,
      dates: [
        { kind: 'installed', on: installedOn, precision: 'day', source: 'fitter' },
        { kind: 'started', on: startedOn, precision: 'day', source: 'startup visit' },
      ],
    });
  // One serviced for the first time soon, one taken on years ago, one whose window is nearly over.
  await add('QC1001', 'quillstone-cinder-c', '2025-04-05', '2025-04-10');
  await add('SP2002', 'sorrelgate-pumice-lp', '2021-05-10', '2021-05-12');
  await add('QC3003', 'quillstone-cinder-c', '2026-02-03', '2026-02-05');
  await bookAndBegin(core, office);
  await core.must('session.signIn', { staffId: office.ownerId, pin: PIN });
}
