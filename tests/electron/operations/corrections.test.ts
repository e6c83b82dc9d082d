import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

describe('what was typed is put right', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const licenceOf = async (staffId: string) => {
    const [licence] = (await test.must('staff.list', {})).find((person) => person.staffId === staffId)?.licences ?? [];
    if (licence === undefined) throw new Error('no licence on file');
    const { licenceId, endReason: _endReason, ...fields } = licence;
    return { licenceId, fields };
  };

  const book = async (plannedOn: string) => {
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    return test.ask('visits.book', {
      jobIds: [jobId],
      plannedOn,
      plannedFrom: null,
      plannedTo: null,
      durationMin: 90,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      note: null,
    });
  };

  it('lets nobody work on a licence whose last day was mistyped, once it is corrected', async () => {
    const { licenceId, fields } = await licenceOf(office.technicianId);
    await test.must('staff.correctLicence', { licenceId, licence: { ...fields, validTo: '2072-03-01' } });
    expect(await book('2028-03-03')).toMatchObject({ ok: true });
    await test.must('staff.correctLicence', { licenceId, licence: { ...fields, validTo: '2027-03-01' } });
    expect(await book('2028-03-03')).toMatchObject({ error: { data: { why: 'not-valid-on-day' } } });
  });

  it('stops a revoked licence the day after its end, and says why', async () => {
    const { licenceId, fields } = await licenceOf(office.technicianId);
    const late = await test.ask('staff.endLicence', { licenceId, lastDay: '2099-01-01', why: 'revoked' });
    expect(late).toMatchObject({ error: { code: 'day-not-between', data: { validFrom: fields.validFrom } } });
    await test.must('staff.endLicence', { licenceId, lastDay: '2026-03-10', why: 'revoked' });
    expect(await book('2026-03-10')).toMatchObject({ ok: true });
    expect(await book('2026-03-11')).toMatchObject({ error: { data: { why: 'not-valid-on-day' } } });
    const person = (await test.must('staff.list', {})).find((one) => one.staffId === office.technicianId);
    expect(person?.licences).toMatchObject([{ validTo: '2026-03-10', endReason: 'revoked' }]);
  });

  it('counts a withdrawn licence for no day, and puts it back', async () => {
    const { licenceId } = await licenceOf(office.technicianId);
    await test.must('staff.withdrawLicence', { licenceId, why: 'of another person' });
    expect(await book('2026-03-10')).toMatchObject({ error: { data: { why: 'no-licence' } } });
    const person = (await test.must('staff.list', {})).find((one) => one.staffId === office.technicianId);
    expect(person?.withdrawn.licences).toMatchObject([{ licenceId, endReason: 'of another person' }]);
    await test.must('staff.putBackLicence', { licenceId });
    expect(await book('2026-03-10')).toMatchObject({ ok: true });
    const changes = await test.must('history.list', { entity: 'licences', entityId: licenceId });
    expect(changes.map(({ kind }) => kind)).toEqual(['update', 'update', 'insert']);
  });

  it('ends, corrects and withdraws a training', async () => {
    const { trainingId } = await test.must('staff.addTraining', {
      staffId: office.technicianId,
      training: { maker: 'Tarn', modelLine: 'K', number: null, validFrom: '2025-01-01', validTo: null },
    });
    await test.must('staff.correctTraining', {
      trainingId,
      training: { maker: 'Tarn', modelLine: 'K 2', number: '7', validFrom: '2025-02-01', validTo: null },
    });
    await test.must('staff.endTraining', { trainingId, lastDay: '2026-01-31', why: 'not renewed' });
    const read = async () => (await test.must('staff.list', {})).find((one) => one.staffId === office.technicianId);
    expect((await read())?.trainings).toEqual([
      {
        trainingId,
        maker: 'Tarn',
        modelLine: 'K 2',
        number: '7',
        validFrom: '2025-02-01',
        validTo: '2026-01-31',
        endReason: 'not renewed',
      },
    ]);
    await test.must('staff.withdrawTraining', { trainingId, why: 'typed twice' });
    expect((await read())?.trainings).toEqual([]);
    await test.must('staff.putBackTraining', { trainingId });
    expect((await read())?.trainings).toHaveLength(1);
  });

  it('keeps a permit one row from applied to inspected', async () => {
    const permit = { number: 'P-1', issuer: 'Invented town', state: 'applied' as const, on: null };
    await test.must('sites.addPermit', { siteId: office.siteId, permit });
    const read = () => test.must('sites.get', { siteId: office.siteId });
    const before = (await read()).permits;
    const { permitId } = before.at(-1) ?? expect.unreachable();
    await test.must('sites.updatePermit', { permitId, permit: { ...permit, state: 'inspected', on: '2026-03-01' } });
    const after = (await read()).permits;
    expect(after).toHaveLength(before.length);
    expect(after.find((one) => one.permitId === permitId)).toMatchObject({ state: 'inspected', on: '2026-03-01' });
    await test.must('sites.withdrawPermit', { permitId, why: 'of the house next door' });
    expect((await read()).permits).toHaveLength(before.length - 1);
    expect((await read()).withdrawnPermits).toMatchObject([{ permitId, endReason: 'of the house next door' }]);
    await test.must('sites.putBackPermit', { permitId });
    expect((await read()).permits).toHaveLength(before.length);
  });

  it('shows and corrects how a tenant is reached, and ends the tenancy with its day', async () => {
    const tenant = {
      kind: 'person' as const,
      name: 'Ossian Plover',
      contactName: null,
      language: null,
      email: 'ossian@example.test',
      phoneTyped: '555 0100',
      street: null,
      postcode: null,
      city: null,
      region: null,
      country: null,
      note: null,
    };
    const { partyId } = await test.must('sites.addRole', {
      siteId: office.siteId,
      party: tenant,
      role: 'occupant',
      fromOn: '2025-05-01',
    });
    const read = async () =>
      (await test.must('sites.get', { siteId: office.siteId })).roles.find((row) => row.partyId === partyId) ??
      expect.unreachable();
    const role = await read();
    expect(role.party).toMatchObject({ phoneTyped: '555 0100', email: 'ossian@example.test' });
    await test.must('parties.update', { partyId, party: { ...tenant, phoneTyped: '555 0199' } });
    expect((await read()).party.phoneTyped).toBe('555 0199');
    const { roleId } = role;
    const future = await test.ask('sites.updateRole', {
      roleId,
      role: 'occupant',
      fromOn: '2025-05-01',
      toOn: '2027-01-01',
    });
    expect(future).toMatchObject({ error: { code: 'day-in-future' } });
    const reversed = await test.ask('sites.updateRole', {
      roleId,
      role: 'occupant',
      fromOn: '2025-05-01',
      toOn: '2025-04-30',
    });
    expect(reversed).toMatchObject({ error: { code: 'dates-reversed' } });
    await test.must('sites.updateRole', { roleId, role: 'occupant', fromOn: '2025-05-01', toOn: '2026-02-28' });
    expect(await read()).toMatchObject({ toOn: '2026-02-28' });
    await test.must('sites.removeRole', { roleId });
    expect((await test.must('sites.get', { siteId: office.siteId })).roles.map((row) => row.roleId)).not.toContain(
      roleId,
    );
  });

  it('takes an instrument out of use and back, and corrects a calibration due in the wrong decade', async () => {
    const { instrumentId } = await test.must('instruments.create', {
      kind: 'manometer',
      label: 'manometer, van 2',
      serial: 'M-2',
      accuracy: {},
      rangeMax: {},
      keptById: null,
    });
    const read = async () =>
      (await test.must('instruments.list', {})).find((one) => one.instrumentId === instrumentId) ??
      expect.unreachable();
    await test.must('instruments.addCalibration', {
      instrumentId,
      calibratedOn: '2025-01-10',
      dueOn: '2026-01-10',
      certificate: null,
    });
    await test.must('instruments.addCalibration', {
      instrumentId,
      calibratedOn: '2026-02-10',
      dueOn: '2036-02-10',
      certificate: 'C-9',
    });
    const calibrationId = (await read()).calibrationId ?? expect.unreachable();
    await test.must('instruments.correctCalibration', {
      calibrationId,
      calibratedOn: '2026-02-10',
      dueOn: '2026-02-20',
      certificate: 'C-9',
    });
    expect(await read()).toMatchObject({ dueOn: '2026-02-20', isInDate: false });
    await test.must('instruments.withdrawCalibration', { calibrationId, why: 'of another one' });
    expect(await read()).toMatchObject({ calibratedOn: '2025-01-10' });
    await test.must('instruments.update', {
      instrumentId,
      instrument: {
        kind: 'manometer',
        label: 'manometer, van 3',
        serial: 'M-2',
        accuracy: {},
        rangeMax: {},
        keptById: office.technicianId,
      },
    });
    await test.must('instruments.retire', { instrumentId, on: '2026-03-01', why: 'dropped' });
    expect(await read()).toMatchObject({ label: 'manometer, van 3', retiredOn: '2026-03-01', endReason: 'dropped' });
    await test.must('instruments.putBack', { instrumentId });
    expect(await read()).toMatchObject({ retiredOn: null, endReason: null });
  });
});
