/** Agreements through the operations: what they do to the lists, and what is refused. */
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { storePath } from '../../../db/openStore.ts';
import { derivationSentence } from '../../../domain/coverage/derivation.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

describe('service agreements', () => {
  let test: TestCore;
  let office: Office;
  let partyId: string;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    const { parties } = await test.must('agreements.list', { applianceId: office.applianceId });
    expect(parties.map(({ name }) => name)).toEqual(['Lowri Kestrel']);
    partyId = parties[0]?.partyId ?? '';
  });
  afterEach(() => test.remove());

  const write = (everyMonths: number, fromOn: string, toOn: string | null = null) =>
    test.ask('agreements.write', {
      applianceId: office.applianceId,
      agreement: { partyId, number: 'A-12', everyMonths, fromOn, toOn },
    });
  const service = async () => (await test.must('serviceDue.list', {})).rows[0];

  it('brings the service forward at once, says who asks for it, and gives it back when ended', async () => {
    // Installed on 26 February 2026, no sheet: the general rule says a year later.
    expect(await service()).toMatchObject({ dueOn: '2027-02-26', sureness: 'general-rule' });
    expect(await write(6, '2026-03-01')).toMatchObject({ ok: true });
    const row = await service();
    expect(row).toMatchObject({ dueOn: '2026-09-01', latestOn: '2026-09-01', sureness: 'agreement', month: '2026-08' });
    expect(row?.demands.map(({ due, agreementNumber }) => [derivationSentence(due), agreementNumber])).toEqual([
      [
        '6 months from the start of the service agreement on 1 Mar 2026, the same day of the month: Tue 1 Sep 2026.',
        'A-12',
      ],
      [expect.stringContaining('Fri 26 Feb 2027'), null],
    ]);
    const { next, ifDoneToday } = await test.must('service.getDue', { applianceId: office.applianceId });
    expect([next?.dueOn, ifDoneToday?.dueOn]).toEqual(['2026-09-01', '2026-09-01']);
    const { cover } = await test.must('coverage.get', { applianceId: office.applianceId });
    expect(cover.service?.dueOn).toBe('2026-09-01');
    const kept = duesOf(test);
    for (let after: string | null = null; ; ) {
      after = (await test.must('dues.rebuild', { after })).next;
      if (after === null) break;
    }
    expect(duesOf(test)).toEqual(kept);

    const { agreements } = await test.must('agreements.list', { applianceId: office.applianceId });
    expect(agreements).toMatchObject([{ partyName: 'Lowri Kestrel', everyMonths: 6, toOn: null }]);
    const agreementId = agreements[0]?.agreementId ?? '';
    await test.must('agreements.end', { agreementId, toOn: '2026-08-31' });
    expect(await service()).toMatchObject({ dueOn: '2027-02-26', sureness: 'general-rule' });
    expect(loggedFields(test)).toEqual([['applianceId', 'everyMonths', 'fromOn', 'number', 'partyId'], ['toOn']]);
  });

  it('puts right what was written wrong, the log keeping what stood there', async () => {
    await write(24, '2026-03-01', '2028-12-31');
    const { agreements } = await test.must('agreements.list', { applianceId: office.applianceId });
    const agreementId = agreements[0]?.agreementId ?? '';
    const agreement = { partyId, number: 'A-13', everyMonths: 6, fromOn: '2026-03-01', toOn: '2028-12-31' };
    // Its own days are no overlap.
    expect(await test.ask('agreements.update', { agreementId, agreement })).toMatchObject({ ok: true });
    expect(await service()).toMatchObject({ dueOn: '2026-09-01', sureness: 'agreement' });
    expect(loggedFields(test).at(-1)).toEqual(['everyMonths', 'number']);
    expect(await write(12, '2029-01-01')).toMatchObject({ ok: true });
    const before = test.snapshot();
    for (const [change, code] of [
      [{ toOn: '2029-01-01' }, 'agreement-overlaps'],
      [{ toOn: '2026-02-28' }, 'days-out-of-order'],
      [{ partyId: office.applianceId }, 'not-found'],
      [{ everyMonths: 61 }, 'bad-input'],
    ] as const)
      expect(
        await test.ask('agreements.update', { agreementId, agreement: { ...agreement, ...change } }),
      ).toMatchObject({ ok: false, error: { code } });
    expect(await test.ask('agreements.update', { agreementId: office.applianceId, agreement })).toMatchObject({
      ok: false,
      error: { code: 'not-found' },
    });
    expect(test.snapshot()).toBe(before);
  });

  it('goes on after all where it was ended by mistake, unless another began meanwhile', async () => {
    await write(6, '2026-03-01', '2026-08-31');
    expect(await service()).toMatchObject({ dueOn: '2027-02-26', sureness: 'general-rule' });
    const { agreements } = await test.must('agreements.list', { applianceId: office.applianceId });
    const agreementId = agreements[0]?.agreementId ?? '';
    await test.must('agreements.end', { agreementId, toOn: null });
    expect(await service()).toMatchObject({ dueOn: '2026-09-01', sureness: 'agreement' });
    await test.must('agreements.end', { agreementId, toOn: '2026-08-31' });
    await write(12, '2026-09-01');
    expect(await test.ask('agreements.end', { agreementId, toOn: null })).toMatchObject({
      ok: false,
      error: { code: 'agreement-overlaps', data: { fromOn: '2026-09-01', toOn: null } },
    });
  });

  it('makes no agreement with somebody who has nothing to do with the appliance', async () => {
    const own = partyId;
    partyId = (await test.must('customers.create', STRANGER)).partyId;
    expect(await write(12, '2026-03-01')).toMatchObject({
      ok: false,
      error: { code: 'party-not-there', data: { name: 'Oswin Tarn' } },
    });
    const other = partyId;
    partyId = own;
    await write(12, '2026-03-01');
    const { agreements } = await test.must('agreements.list', { applianceId: office.applianceId });
    const { agreementId = '' } = agreements[0] ?? {};
    const agreement = { partyId: other, number: null, everyMonths: 12, fromOn: '2026-03-01', toOn: null };
    expect(await test.ask('agreements.update', { agreementId, agreement })).toMatchObject({
      ok: false,
      error: { code: 'party-not-there' },
    });
  });

  it('refuses two at once, an end before the beginning, nobody, and whoever may not', async () => {
    expect(await write(12, '2026-03-01', '2026-02-28')).toMatchObject({
      ok: false,
      error: { code: 'days-out-of-order' },
    });
    expect(await write(12, '2026-03-01', '2026-12-31')).toMatchObject({ ok: true });
    expect(await write(12, '2026-12-31')).toMatchObject({
      ok: false,
      error: { code: 'agreement-overlaps', data: { fromOn: '2026-03-01', toOn: '2026-12-31' } },
    });
    expect(await write(12, '2027-01-01')).toMatchObject({ ok: true });
    const { agreements } = await test.must('agreements.list', { applianceId: office.applianceId });
    const first = agreements.at(-1)?.agreementId ?? '';
    expect(await test.ask('agreements.end', { agreementId: first, toOn: '2027-01-01' })).toMatchObject({
      ok: false,
      error: { code: 'agreement-overlaps' },
    });
    expect(await test.ask('agreements.end', { agreementId: first, toOn: '2026-02-28' })).toMatchObject({
      ok: false,
      error: { code: 'days-out-of-order' },
    });
    const before = test.snapshot();
    for (const everyMonths of [0, 61, 1.5])
      expect(await write(everyMonths, '2029-01-01', '2029-12-31')).toMatchObject({
        ok: false,
        error: { code: 'bad-input' },
      });
    partyId = office.applianceId;
    expect(await write(12, '2025-01-01', '2025-12-31')).toMatchObject({ ok: false, error: { code: 'not-found' } });
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    expect(await write(12, '2025-01-01', '2025-12-31')).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    expect(test.snapshot()).toBe(before);
  });
});

const STRANGER = {
  party: {
    kind: 'person',
    name: 'Oswin Tarn',
    contactName: null,
    language: 'en',
    email: null,
    phoneTyped: null,
    street: '4 Quarry Row',
    postcode: null,
    city: 'Graven Bay',
    region: null,
    country: 'CA',
    note: null,
  },
  note: null,
} as const;

function duesOf(test: TestCore): readonly unknown[] {
  return read(test, 'SELECT * FROM appliance_dues ORDER BY appliance_id, kind');
}

/** Which fields each write to an agreement put into the change log. */
function loggedFields(test: TestCore): readonly (readonly string[])[] {
  const rows = read(test, "SELECT fields FROM op WHERE entity = 'service_agreements' ORDER BY device_seq");
  return (rows as { fields: string }[]).map(({ fields }) => Object.keys(JSON.parse(fields) as object).sort());
}

function read(test: TestCore, sql: string): readonly unknown[] {
  const raw = new Database(storePath(test.folder), { readonly: true });
  try {
    return raw.prepare(sql).all();
  } finally {
    raw.close();
  }
}
