import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

describe('the office, through the operations', () => {
  let test: TestCore;
  beforeEach(() => {
    test = openTestCore();
  });
  afterEach(() => test.remove());

  it('goes from nothing to a booked startup', async () => {
    const office = await setUpOffice(test);
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'startup', note: null });
    const [job] = await test.must('jobs.list', {});
    expect(job).toMatchObject({ jobId, serial: 'TK204417', customerName: 'Lowri Kestrel', visitId: null });
    const booking = {
      jobIds: [jobId],
      plannedOn: '2026-03-03',
      plannedFrom: '09:00',
      plannedTo: '12:00',
      durationMin: 180,
      crew: [{ staffId: office.technicianId, role: 'licensed' as const }],
      isPencilled: false,
      note: null,
    };
    const refused = await test.ask('visits.book', booking);
    expect(refused).toMatchObject({ ok: false, error: { code: 'readiness-open' } });
    for (const itemKey of job?.openReadiness ?? []) {
      await test.must('jobs.setReadiness', { jobId, itemKey, answer: 'yes', note: null, confirmedBy: 'builder' });
    }
    const { visitId } = await test.must('visits.book', booking);
    const [visit] = await test.must('visits.list', { from: '2026-03-01', to: '2026-03-31' });
    expect(visit).toMatchObject({ visitId, state: 'planned', customerName: 'Lowri Kestrel' });
    expect((await test.must('customers.get', { customerId: office.customerId })).appliances).toHaveLength(1);
  });

  it('will not book a crew without a licence for the day', async () => {
    const office = await setUpOffice(test);
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    const reply = await test.ask('visits.book', {
      jobIds: [jobId],
      plannedOn: '2028-03-03',
      plannedFrom: null,
      plannedTo: null,
      durationMin: 90,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      note: null,
    });
    expect(reply).toMatchObject({ ok: false, error: { code: 'needs-licence', data: { why: 'not-valid-on-day' } } });
  });

  it('asks before a customer is filed twice', async () => {
    const office = await setUpOffice(test);
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    const { partyId: _partyId, phoneE164: _phone, ...fields } = party;
    const again = await test.ask('customers.create', {
      party: { ...fields, name: 'L. Kestrel', email: null },
      note: null,
    });
    expect(again).toMatchObject({
      ok: false,
      error: { code: 'looks-like', data: { others: [{ customerId: office.customerId, why: 'phone' }] } },
    });
    expect(await test.ask('customers.create', { party: fields, note: null, isKnownNew: true })).toMatchObject({
      ok: true,
    });
  });

  it('finds the same serial however it is typed, and refuses it twice', async () => {
    const office = await setUpOffice(test);
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    const found = await test.must('appliances.list', { query: 'tk 2o4-4i7' });
    expect(found.rows.map((row) => row.serial)).toEqual(['TK204417']);
    const twice = await test.ask('appliances.create', {
      siteId: office.siteId,
      appliance: { ...appliance, serial: 'TK2O4417' },
      position: null,
      dates: [],
    });
    expect(twice).toMatchObject({ ok: false, error: { code: 'serial-taken' } });
  });

  it('makes guessing a PIN slow, and asks again after a restart', async () => {
    const office = await setUpOffice(test);
    const wrong = { staffId: office.technicianId, pin: '0000' };
    for (let attempt = 0; attempt < 3; attempt += 1) await test.ask('session.signIn', wrong);
    const right = { staffId: office.technicianId, pin: PIN };
    expect(await test.ask('session.signIn', right)).toMatchObject({
      ok: false,
      error: { code: 'wrong-pin', data: { waitS: 5 } },
    });
    test.wait(6);
    expect(await test.ask('session.signIn', right)).toMatchObject({ ok: true });
    test.restart();
    expect(await test.ask('staff.list', {})).toMatchObject({ ok: false, error: { code: 'not-signed-in' } });
  });
});
