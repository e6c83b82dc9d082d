/** Days that the office types are held against today and against one another; what can't have been is refused, unwritten. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { InputOf, OperationName } from '../../../electron/contract/index.ts';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

describe('a day typed in the office', () => {
  let test: TestCore;
  let office: Office;
  let appliance: InputOf<'appliances.update'>['appliance'];
  beforeAll(async () => {
    test = openTestCore('2026-03-02T13:00:00.000Z');
    office = await setUpOffice(test);
    appliance = (await test.must('appliances.get', { applianceId: office.applianceId })).appliance;
  });
  afterAll(() => test.remove());

  async function isRefused<N extends OperationName>(name: N, input: InputOf<N>, error: object) {
    const before = test.snapshot();
    expect(await test.ask(name, input)).toMatchObject({ ok: false, error });
    expect(test.snapshot()).toBe(before);
  }
  const setDate = (kind: 'made' | 'installed' | 'started', on: string) =>
    ({ applianceId: office.applianceId, date: { kind, on, precision: 'day', source: 'office' } }) as const;

  it.each([
    ['started', '2031-03-02', { code: 'day-in-future' }],
    ['installed', '2027-02-26', { code: 'day-in-future' }],
    ['started', '2025-03-02', { code: 'dates-out-of-order', data: { earlier: 'installed', later: 'started' } }],
    ['made', '2026-02-27', { code: 'dates-out-of-order', data: { earlier: 'made', later: 'installed' } }],
  ] as const)('%s on %s', async (kind, on, error) => {
    await isRefused('appliances.setDate', setDate(kind, on), error);
  });

  it('is taken when the month that it is known to does not speak against it', async () => {
    const date = { kind: 'made', on: '2026-02-01', precision: 'month', source: 'plate' } as const;
    expect(await test.ask('appliances.setDate', { applianceId: office.applianceId, date })).toMatchObject({ ok: true });
  });

  it('consent given on a day to come', async () => {
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    const consent = { purpose: 'registration', channel: 'e-mail', granted: true, source: 'by phone' } as const;
    await isRefused(
      'customers.recordConsent',
      { partyId: party.partyId, ...consent, on: '2040-01-01' },
      { code: 'day-in-future' },
    );
    const decided = { applianceId: office.applianceId, by: 'office', followUpOn: null } as const;
    await isRefused('registrations.decide', { ...decided, ownerConsentOn: '2039-01-01' }, { code: 'day-in-future' });
  });

  it.each([{ ratedInputKw: 0.001 }, { ventElbows: 99_999 }])('and a plate that no boiler has: %j', async (more) => {
    const input = { applianceId: office.applianceId, appliance: { ...appliance, ...more } };
    await isRefused('appliances.update', input, { code: 'bad-input' });
  });

  it('a second startup of a boiler whose startup is open', async () => {
    const startup = { applianceId: office.applianceId, kind: 'startup', note: null } as const;
    const { jobId } = await test.must('jobs.open', startup);
    await isRefused('jobs.open', startup, { code: 'startup-open', data: { jobId } });
    expect(await test.ask('jobs.open', { ...startup, kind: 'repair' })).toMatchObject({ ok: true });
  });

  it('a serial that is easily read for one on file says which, and that it is the other of a pair', async () => {
    const pair = { siteId: office.siteId, appliance: { ...appliance, serial: 'TK2O4417' }, position: null, dates: [] };
    await isRefused('appliances.create', pair, {
      code: 'serial-taken',
      data: {
        applianceId: office.applianceId,
        how: 'serial-confusable',
        otherSerial: 'TK204417',
        isOnSameSite: true,
        where: 'Lowri Kestrel, 9 Fathom Street, Graven Bay',
      },
    });
  });
});
