/** The sheet for the people who live there: one page, danger first, nothing without a number to call. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { readPdf } from '../../support/readPdf.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { type BookedRun, bookAndBegin, readStartupNotes, walkRun } from '../../support/wholeJob.ts';

describe('the handover sheet', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
    await walkRun(test, office, run, readStartupNotes());
  });
  afterEach(() => test.remove());

  const build = async (language: 'en' | 'fr' | 'es') => {
    const { attachmentId, awaitsNativeReader } = await test.must('handovers.build', { runId: run.runId, language });
    const file = await test.core.getFile(attachmentId, 'test-window');
    if (file === null) throw new Error('the sheet is not in the store');
    return { ...(await readPdf(file.bytes)), awaitsNativeReader };
  };

  it('is one page with the danger first, then settings, service and whom to call', async () => {
    const { pages, language, awaitsNativeReader } = await build('en');
    expect(pages).toHaveLength(1);
    // Numbers to call are held together by spaces that do not break.
    const text = (pages[0] ?? '').replaceAll('\u00a0', ' ');
    expect(text).toContain('leave the house first, touch no switch, and call 902 555 0199 from outside');
    expect(text).toContain('do not reset it');
    // 13 psi after the purge, 18 psi hot; 55 °C at −15 °C outside.
    expect(text).toContain('0.90 bar');
    expect(text).toContain('1.24 bar');
    expect(text).toMatch(/55(\.0)? °C when it is −15(\.0)? °C outside/);
    expect(text).toContain('Friday, 26 February 2027');
    expect(text).toContain('902 555 0142');
    expect(text.indexOf('touch no switch')).toBeLessThan(text.indexOf('How it is set'));
    expect({ language, awaitsNativeReader }).toEqual({ language: 'en', awaitsNativeReader: false });
  });

  it.each([
    ['fr', 'sortez d’abord, ne touchez aucun interrupteur', '0,90 bar'],
    ['es', 'salga primero, no toque ningún interruptor', '0,90 bar'],
  ] as const)('speaks %s, on one page, and awaits a native reader', async (language, safety, pressure) => {
    const { pages, awaitsNativeReader } = await build(language);
    expect(pages).toHaveLength(1);
    expect(pages[0]).toContain(safety);
    expect(pages[0]).toContain(pressure);
    expect(awaitsNativeReader).toBe(true);
  });
});

describe('the language of the handover sheet, and its number to call', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
  });
  afterEach(() => test.remove());

  it('speaks the customer’s language where it is on file, not the firm’s', async () => {
    const onFile = await test.must('customers.get', { customerId: office.customerId });
    const { partyId: _partyId, phoneE164: _phoneE164, ...party } = onFile.party;
    const speaks = async (language: 'en' | 'fr' | 'es' | null) => {
      await test.must('customers.update', {
        customerId: office.customerId,
        party: { ...party, language },
        note: null,
      });
      return (await test.must('handovers.build', { runId: run.runId })).language;
    };
    expect(await speaks('fr')).toBe('fr');
    expect(await speaks(null)).toBe('en');
  });

  it('speaks the language of whoever lives there before that of whoever pays, and another one on the spot', async () => {
    const asked = () => test.must('handovers.getLanguage', { runId: run.runId });
    expect(await asked()).toMatchObject({ language: 'en', of: 'customer', name: 'Lowri Kestrel' });
    const person = {
      kind: 'person',
      contactName: null,
      email: null,
      phoneTyped: null,
      street: null,
      postcode: null,
      city: null,
      region: null,
      country: null,
      note: null,
    } as const;
    const moveIn = (name: string, language: 'fr' | 'es' | null, fromOn: string) =>
      test.must('sites.addRole', {
        siteId: office.siteId,
        party: { ...person, name, language },
        role: 'occupant',
        fromOn,
      });
    await moveIn('Aurelien Brume', null, '2025-06-01');
    expect(await asked()).toMatchObject({ language: 'en', of: 'customer' });
    await moveIn('Inés Montoro', 'es', '2025-06-01');
    await moveIn('Odile Vasse', 'fr', '2030-01-01');
    expect(await asked()).toEqual({ language: 'es', of: 'occupant', name: 'Inés Montoro' });
    expect((await test.must('handovers.build', { runId: run.runId })).language).toBe('es');
    expect((await test.must('handovers.build', { runId: run.runId, language: 'fr' })).language).toBe('fr');
  });

  it('is not printed without an emergency number on file, and leaves nothing behind', async () => {
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const { company } = await test.must('app.status', {});
    if (company === null) throw new Error('no company');
    await test.must('company.update', { ...company, emergencyNumber: null });
    const before = test.snapshot();
    expect(await test.ask('handovers.build', { runId: run.runId })).toMatchObject({
      ok: false,
      error: { code: 'emergency-number-missing' },
    });
    expect(test.snapshot()).toBe(before);
  });
});
