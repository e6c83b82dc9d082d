/** A notice through the operations: whom it is about, who can't be told, the letters, what was done. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RecallFields } from '../../../../electron/contract/recalls.ts';
import { type Office, PIN, setUpOffice } from '../../../support/officeScenario.ts';
import { readPdf } from '../../../support/readPdf.ts';
import { openTestCore, type TestCore } from '../../../support/testCore.ts';

const NOTICE: RecallFields = {
  title: 'Trap may leak flue gas',
  number: 'N-26-04',
  source: 'The maker',
  maker: 'invented MAKER',
  models: ['T24'],
  serialRanges: [{ from: 'TK204000', to: 'TK204417' }],
  altitudeMinM: null,
  altitudeMaxM: null,
  issuedOn: '2026-02-20',
  whatToDo: 'Do not use the boiler until the trap has been replaced.',
  mayFire: false,
};

describe('a notice', () => {
  let test: TestCore;
  let office: Office;
  let recallId: string;
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    for (const [serial, model] of [
      ['TK204418', 'T 24'],
      ['TK2O4200', 'T 24'],
      ['unknown', 'T 24'],
      ['TK204100', 'T 30'],
    ] as const) {
      await test.must('appliances.create', {
        siteId: office.siteId,
        appliance: { ...appliance, serial, model },
        position: null,
        dates: [],
      });
    }
    recallId = (await test.must('recalls.save', { recallId: null, recall: NOTICE })).recallId;
  });
  afterAll(() => test.remove());

  const get = (show: 'open' | 'doubtful' | 'settled' | 'all' = 'open') => test.must('recalls.get', { recallId, show });

  it('names those it is about, the last of the range with them, and those that can’t be told', async () => {
    const { recall, rows } = await get();
    expect(recall.counts).toEqual({ affected: 1, doubtful: 2, open: 3, told: 0 });
    expect(rows.map(({ serial, doubts }) => [serial, doubts]).sort()).toEqual([
      ['TK204417', []],
      ['TK2O4200', ['serial-look-alike']],
      ['unknown', ['serial-without-number']],
    ]);
    expect((await get('doubtful')).rows).toHaveLength(2);
    expect(rows[0]).toMatchObject({ customerName: 'Lowri Kestrel', phone: '902 555 0111' });
  });

  it('follows the files: a serial put right, an altitude in the notice', async () => {
    const lower = { ...NOTICE, altitudeMinM: 500 };
    await test.must('recalls.save', { recallId, recall: lower });
    expect((await get('all')).rows).toEqual([]);
    await test.must('recalls.save', { recallId, recall: NOTICE });
    expect((await get('all')).rows).toHaveLength(3);
  });

  it('goes out in writing whatever was agreed to, with safety words, and is kept with who was told', async () => {
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    await test.must('customers.recordConsent', {
      partyId: party.partyId,
      purpose: 'safety',
      channel: 'letter',
      granted: false,
      on: '2026-01-10',
      source: 'on the phone',
    });
    const asked = { about: { kind: 'recall', recallId }, channel: 'letter' } as const;
    const { keys, total } = await test.must('messages.standing', asked);
    expect(total).toBe(3);
    const previews = await test.must('messages.check', { keys, channel: 'letter' });
    expect(previews.every(({ leftOutBecause, missing }) => leftOutBecause === null && missing.length === 0)).toBe(true);
    const { attachmentId, fileName } = await test.must('messages.prepare', {
      keys,
      channel: 'letter',
      form: 'one-file',
    });
    expect(fileName).toBe('notice-2026-03-02-letters.pdf');
    const file = await test.core.getFile(attachmentId, 'test-window');
    const text = (await readPdf(file?.bytes ?? new Uint8Array())).pages.join(' ').replaceAll(/\s+/g, ' ');
    expect(text).toContain('Trap may leak flue gas (N-26-04)');
    expect(text).toContain('serial number TK204417, at 9 Fathom Street, Graven Bay is among the appliances');
    expect(text).toContain('may be among the appliances it is about: our files cannot tell');
    expect(text).toContain('Do not use the boiler until the trap has been replaced.');
    expect(text).toContain('call 902 555 0199 from outside');
    expect((await get()).recall.counts).toMatchObject({ open: 3, told: 3 });
    expect(await test.must('messages.standing', asked)).toMatchObject({ total: 3, preparedCount: 3 });
  });

  it('does not count somebody as told whose letter came back, and offers to write again', async () => {
    const asked = { about: { kind: 'recall', recallId }, channel: 'letter' } as const;
    const { keys } = await test.must('messages.standing', asked);
    const { rows } = await test.must('messages.list', {});
    const messageIds = rows.slice(0, 1).map(({ messageId }) => messageId);
    await test.must('messages.record', { messageIds, kind: 'bounced', on: '2026-03-02', note: 'moved away' });
    expect((await get()).recall.counts).toMatchObject({ told: 2 });
    const again = await test.must('messages.prepare', { keys, channel: 'letter', form: 'one-file' });
    expect(again).toMatchObject({ preparedCount: 1 });
    expect((await get()).recall.counts).toMatchObject({ told: 3 });
  });

  it('makes no notice without an emergency number on file', async () => {
    const { company } = await test.must('app.status', {});
    if (company === null) throw new Error('no company');
    const { keys } = await test.must('messages.standing', { about: { kind: 'recall', recallId }, channel: 'letter' });
    await test.must('company.update', { ...company, emergencyNumber: null });
    const previews = await test.must('messages.check', { keys, channel: 'letter' });
    expect(previews.map(({ leftOutBecause }) => leftOutBecause)).toEqual(keys.map(() => 'no-emergency-number'));
    await test.must('company.update', company);
  });

  it('keeps what was told by phone and what was done, and asks for it no more', async () => {
    const { applianceId } = office;
    await test.must('recalls.noteTold', { recallId, applianceId, channel: 'phone', on: '2026-03-01', note: 'her son' });
    const log = await test.must('messages.list', {});
    expect(log.rows).toContainEqual(
      expect.objectContaining({
        channel: 'phone',
        kind: 'recall',
        events: [{ kind: 'sent', on: '2026-03-01', note: 'her son' }],
      }),
    );
    const done = { recallId, applianceId, outcome: 'done', note: 'trap replaced', byId: office.technicianId } as const;
    expect(await test.ask('recalls.settle', { ...done, on: '2026-03-09' })).toMatchObject({
      ok: false,
      error: { code: 'day-in-future' },
    });
    await test.must('recalls.settle', { ...done, outcome: 'refused', on: '2026-03-01' });
    await test.must('recalls.settle', { ...done, on: '2026-03-02' });
    expect((await get('settled')).rows).toMatchObject([
      { serial: 'TK204417', outcome: { outcome: 'done', on: '2026-03-02', note: 'trap replaced' } },
    ]);
    const { total } = await test.must('messages.standing', { about: { kind: 'recall', recallId }, channel: 'letter' });
    expect(total).toBe(2);
    await test.must('recalls.close', { recallId, closedOn: '2026-03-02' });
    expect(
      await test.must('messages.standing', { about: { kind: 'recall', recallId }, channel: 'letter' }),
    ).toMatchObject({ total: 0 });
  });

  it.each([
    [{ serialRanges: [{ from: 'A1', to: 'B9' }] }, 'serial-range-unclear'],
    [{ altitudeMinM: 900, altitudeMaxM: 100 }, 'altitudes-reversed'],
  ])('refuses %j before anything is written', async (more, code) => {
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const before = test.snapshot();
    expect(await test.ask('recalls.save', { recallId: null, recall: { ...NOTICE, ...more } })).toMatchObject({
      ok: false,
      error: { code },
    });
    expect(test.snapshot()).toBe(before);
  });
});
