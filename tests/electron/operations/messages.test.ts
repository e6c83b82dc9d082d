/** Reminders made into letters, drafts, tables and calendars: quiet by default, nothing with a hole, read back by other programs. */
import { unzipSync } from 'fflate';
import ICAL from 'ical.js';
import Papa from 'papaparse';
import PostalMime from 'postal-mime';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { InputOf } from '../../../electron/contract/index.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { readPdf } from '../../support/readPdf.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

const PER_CUSTOMER = 'test-window';

describe('reminders as things people can send', () => {
  let test: TestCore;
  let office: Office;
  let partyId: string;
  beforeEach(async () => {
    test = openTestCore();
    // Installed 360 days ago: serviced in five days, by the general rule of twelve months.
    office = await setUpOffice(test, { installedOn: '2025-03-07' });
    partyId = (await reminder()).partyId;
  });
  afterEach(() => test.remove());

  const reminder = async () => {
    const [row] = (await test.must('reminders.list', {})).rows;
    if (row === undefined) throw new Error('no reminder stands');
    return row;
  };
  const agree = (channel: 'letter' | 'e-mail', granted = true) =>
    test.must('customers.recordConsent', {
      partyId,
      purpose: 'service-due',
      channel,
      granted,
      on: '2026-03-01',
      source: 'on the phone',
    });
  const prepare = async (more: Partial<InputOf<'messages.prepare'>> = {}) =>
    test.ask('messages.prepare', { keys: [(await reminder()).key], channel: 'letter', form: 'one-file', ...more });
  const bytesOf = async (attachmentId: string) => {
    const file = await test.core.getFile(attachmentId, PER_CUSTOMER);
    if (file === null) throw new Error('the file is not in the store');
    return file.bytes;
  };
  const made = async (more: Partial<InputOf<'messages.prepare'>>) => {
    const reply = await prepare(more);
    if (!reply.ok) throw new Error(JSON.stringify(reply.error));
    return bytesOf(reply.value.attachmentId);
  };

  it('makes nothing for somebody who was never asked, or said no since', async () => {
    const before = test.snapshot();
    expect(await prepare()).toMatchObject({
      ok: false,
      error: { code: 'nothing-to-prepare', data: { because: ['no-consent'] } },
    });
    expect(test.snapshot()).toBe(before);
    await agree('letter');
    await agree('letter', false);
    expect(await prepare()).toMatchObject({ ok: false, error: { data: { because: ['no-consent'] } } });
  });

  it('writes a letter with name, appliance and days, once for each stage', async () => {
    await agree('letter');
    const text = (await readPdf(await made({}))).pages.join(' ');
    expect(text).toContain('Dear Lowri Kestrel');
    expect(text).toContain('Invented maker T 24');
    expect(text).toContain('Saturday, 7 March 2026');
    expect(await prepare()).toMatchObject({
      ok: false,
      error: { code: 'nothing-to-prepare', data: { because: ['prepared-already'] } },
    });
    expect(await prepare({ isKnownAgain: true })).toMatchObject({ ok: true });
    expect((await test.must('messages.list', {})).rows).toHaveLength(2);
  });

  it('writes in the language of the person, and says that French awaits a native reader', async () => {
    await agree('letter');
    const keys = [(await reminder()).key];
    const [preview] = await test.must('messages.check', { keys, channel: 'letter', language: 'fr' });
    expect(preview).toMatchObject({ language: 'fr', awaitsNativeReader: true, missing: [], leftOutBecause: null });
    expect(preview?.body).toContain('samedi 7 mars 2026');
  });

  it('gives a draft that another program reads (RFC 5322)', async () => {
    await agree('e-mail');
    const [draft] = Object.values(unzipSync(await made({ channel: 'e-mail' })));
    const mail = await PostalMime.parse(draft ?? new Uint8Array());
    expect(mail.to).toMatchObject([{ name: 'Lowri Kestrel', address: 'lowri@kestrel.example' }]);
    expect(mail.from).toMatchObject({ name: 'Kittiwake Heating', address: 'office@kittiwake.example' });
    expect(mail.subject).toBe('Annual service of your Invented maker T 24');
    expect(mail.text).toContain('Dear Lowri Kestrel');
  });

  it('gives a table for mail merge in which nothing is a formula', async () => {
    await agree('letter');
    await test.must('messageTemplates.save', {
      kind: 'service-due',
      channel: 'letter',
      language: 'en',
      subject: '=HYPERLINK("x")',
      body: '+1 {{name}}',
    });
    const csv = new TextDecoder().decode(await made({ form: 'mail-merge' }));
    const { data } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
    expect(data[0]).toMatchObject({ name: 'Lowri Kestrel', subject: '\'=HYPERLINK("x")', body: "'+1 Lowri Kestrel" });
  });

  it('names what a wording lacks, and makes nothing with a hole in it', async () => {
    await agree('letter');
    await test.must('messageTemplates.save', {
      kind: 'service-due',
      channel: 'letter',
      language: 'en',
      subject: 'Service',
      body: 'We come on {{visitOn}}.',
    });
    const keys = [(await reminder()).key];
    expect(await test.must('messages.check', { keys, channel: 'letter' })).toMatchObject([
      { missing: ['visitOn'], leftOutBecause: 'missing-fields' },
    ]);
    expect(await prepare()).toMatchObject({ ok: false, error: { code: 'nothing-to-prepare' } });
    expect(
      await test.ask('messageTemplates.save', {
        kind: 'service-due',
        channel: 'letter',
        language: 'en',
        subject: 'Service',
        body: '{{nmae}}',
      }),
    ).toMatchObject({ ok: false, error: { code: 'unknown-fields', data: { names: ['nmae'] } } });
    await test.must('messageTemplates.reset', { kind: 'service-due', channel: 'letter', language: 'en' });
    expect(await prepare()).toMatchObject({ ok: true });
  });

  it('gives no safety advice without an emergency number on file', async () => {
    await agree('letter');
    await test.must('messageTemplates.save', {
      kind: 'service-due',
      channel: 'letter',
      language: 'en',
      subject: 'Service',
      body: 'Dear {{name}}\n\nIf you smell gas, go out first.',
    });
    const keys = [(await reminder()).key];
    expect(await test.must('messages.check', { keys, channel: 'letter' })).toMatchObject([{ leftOutBecause: null }]);
    const { company } = await test.must('app.status', {});
    if (company === null) throw new Error('no company');
    await test.must('company.update', { ...company, emergencyNumber: null });
    expect(await test.must('messages.check', { keys, channel: 'letter' })).toMatchObject([
      { leftOutBecause: 'no-emergency-number' },
    ]);
  });

  it('keeps what came of it', async () => {
    await agree('letter');
    await prepare();
    const messageIds = (await test.must('messages.list', {})).rows.map(({ messageId }) => messageId);
    await test.must('messages.record', { messageIds, kind: 'sent', on: '2026-03-02', note: null });
    expect((await test.must('messages.list', {})).rows).toMatchObject([
      { name: 'Lowri Kestrel', events: [{ kind: 'sent', on: '2026-03-02' }] },
    ]);
    expect(
      await test.ask('messages.record', { messageIds, kind: 'answered', on: '2026-03-09', note: null }),
    ).toMatchObject({ ok: false, error: { code: 'day-in-future' } });
  });

  it('gives a calendar of due days that another program reads (RFC 5545)', async () => {
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    const { text, count } = await test.must('dueCalendars.export', {});
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
    expect(count).toBe(1);
    expect(events[0]?.summary).toContain('Lowri Kestrel');
    expect(events[0]?.startDate.toString()).toBe('2026-03-07');
  });
});
