/** A claim three years on, parts paid and labour refused (F-17): found by a sloppy serial in one step, and one PDF with all there is. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Office, PIN, setUpOffice } from '../../../support/officeScenario.ts';
import { readPdf } from '../../../support/readPdf.ts';
import { openTestCore, type TestCore } from '../../../support/testCore.ts';
import { bookAndBegin, readStartupNotes, walkRun } from '../../../support/wholeJob.ts';

describe('an appliance’s life', () => {
  let test: TestCore;
  let office: Office;
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    const run = await bookAndBegin(test, office);
    await walkRun(test, office, run, readStartupNotes());
    await test.must('visits.finish', { visitId: run.visitId, outcome: 'finished', reason: null, labourMin: 180 });
    await test.must('visits.seal', { visitId: run.visitId, runId: run.runId });
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
  }, 120_000);
  afterAll(() => test.remove());

  const claim = {
    partNumber: 'HX-4471',
    partName: 'heat exchanger',
    openedOn: '2026-03-02',
    sentOn: null,
    partReturnedOn: null,
    claimNumber: null,
    decidedOn: null,
    isWithdrawn: false,
    currency: 'USD',
    partsMinorUnits: 38_500,
    partsOutcome: null,
    partsGrantedMinorUnits: null,
    labourMinorUnits: 75_500,
    labourOutcome: null,
    labourGrantedMinorUnits: null,
    refusedBecause: null,
    note: null,
  };

  it('finds it by the serial another firm wrote down, with the readings and photos of its startup', async () => {
    const { rows } = await test.must('appliances.list', { query: 'tk-2O44 l7' });
    expect(rows.map(({ applianceId }) => applianceId)).toEqual([office.applianceId]);
    const { entries } = await test.must('history.get', { applianceId: office.applianceId });
    const [startup] = entries.filter(({ kind }) => kind === 'visit');
    expect(startup).toMatchObject({ what: 'startup', detail: 'sealed' });
    expect(startup?.readings.length).toBeGreaterThan(20);
    expect(startup?.readings.map(({ quantity }) => quantity)).toContain('waterPh');
    expect(startup?.photos.length).toBeGreaterThan(2);
    expect(entries.map(({ kind, what }) => `${kind} ${what}`)).toContain('date installed');
  });

  it('keeps the claim as it was decided: parts 385 granted, labour 755 refused', async () => {
    const { claimId } = await test.must('claims.open', { applianceId: office.applianceId, claim });
    expect(await test.must('claims.list', {})).toMatchObject([{ claimId, outcome: 'open' }]);
    const decided = {
      ...claim,
      sentOn: '2026-03-03',
      decidedOn: '2026-03-20',
      partsOutcome: 'granted' as const,
      partsGrantedMinorUnits: 38_500,
      labourOutcome: 'refused' as const,
      refusedBecause: 'see the terms of installation',
    };
    await test.must('claims.update', { claimId, claim: decided });
    expect(await test.must('claims.list', { applianceId: office.applianceId })).toMatchObject([
      { outcome: 'granted-in-part', claim: decided },
    ]);
    expect(await test.must('claims.list', { openOnly: true })).toEqual([]);
  });

  it.each([
    ['an amount without a currency', { currency: null }, 'currency-missing'],
    ['sent before it was opened', { sentOn: '2026-01-01' }, 'days-out-of-order'],
    [
      'more granted than asked',
      { partsGrantedMinorUnits: 38_501, partsOutcome: 'granted' as const },
      'granted-more-than-asked',
    ],
  ])('refuses %s', async (_what, change, code) => {
    const before = test.snapshot();
    const reply = await test.ask('claims.open', { applianceId: office.applianceId, claim: { ...claim, ...change } });
    expect(reply).toMatchObject({ ok: false, error: { code } });
    expect(test.snapshot()).toBe(before);
  });

  it('makes one PDF: readings, photos, water quality, service history, licences; nobody’s contacts, no verdict on cover', async () => {
    const [row] = await test.must('claims.list', { applianceId: office.applianceId });
    const made = await test.must('claims.buildFile', {
      applianceId: office.applianceId,
      claimId: row?.claimId ?? null,
    });
    expect(made).toMatchObject({ fileName: 'claim-file-TK204417.pdf', recordCount: 1 });
    const file = await test.core.getFile(made.attachmentId, 'test-window');
    const pdf = await readPdf(file?.bytes ?? new Uint8Array());
    const text = pdf.pages.join(' ').replaceAll(/\s+/g, ' ');
    expect(pdf).toMatchObject({ isMarked: true, language: 'en', figuresWithoutAlt: 0 });
    for (const wanted of [
      'TK204417',
      'HX-4471',
      'G2-88120',
      'valid that day',
      'Service history',
      'Photos',
      'Instruments',
      'USD',
      '385.00',
      'refused',
    ])
      expect(text).toContain(wanted);
    expect(text).toMatch(/pH/);
    expect(text).not.toMatch(/lowri@kestrel|902 555 0111/i);
    expect(text).not.toMatch(/\b(void|covered)\b/i);
  });

  it('hands the house over: the history stays, the former owner is a name, the search finds the new one', async () => {
    const before = await test.must('history.get', { applianceId: office.applianceId });
    expect(before.owners).toMatchObject([{ name: 'Lowri Kestrel', phone: '902 555 0111', toOn: null }]);
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    const { partyId: _partyId, phoneE164: _phone, ...fields } = party;
    const buyer = { ...fields, name: 'Signe Avocet', email: 'signe@avocet.example', phoneTyped: '902 555 0160' };
    const ahead = { siteId: office.siteId, on: '2026-12-31', to: buyer };
    expect(await test.ask('sites.transfer', ahead)).toMatchObject({ error: { code: 'day-in-future' } });
    const { customerId } = await test.must('sites.transfer', { ...ahead, on: '2026-03-01' });
    const after = await test.must('history.get', { applianceId: office.applianceId });
    expect(after.owners).toEqual([
      { name: 'Signe Avocet', fromOn: '2026-03-01', toOn: null, phone: '902 555 0160', email: 'signe@avocet.example' },
      { name: 'Lowri Kestrel', fromOn: null, toOn: '2026-03-01', phone: null, email: null },
    ]);
    expect(after.entries.filter(({ kind }) => kind === 'visit')).toEqual(
      before.entries.filter(({ kind }) => kind === 'visit'),
    );
    expect((await test.must('customers.get', { customerId })).sites).toHaveLength(1);
    expect((await test.must('customers.get', { customerId: office.customerId })).sites).toEqual([]);
    expect((await test.must('appliances.list', { query: 'avocet' })).rows).toHaveLength(1);
    expect((await test.must('appliances.list', { query: 'kestrel' })).rows).toEqual([]);
    expect(
      await test.ask('sites.transfer', { siteId: office.siteId, on: '2026-03-02', to: { customerId } }),
    ).toMatchObject({
      error: { code: 'same-owner' },
    });
  });
});
