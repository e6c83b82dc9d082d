/** A licence with an upper limit where nobody has read the plate: who is sent, what waits, and what opens it. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../../support/wholeJob.ts';

const WAITS = { ok: false, error: { code: 'needs-licence', data: { why: 'rating-unknown' } } };

let test: TestCore;
let office: Office;
beforeEach(async () => {
  test = openTestCore();
  office = await setUpOffice(test, { appliance: { ratedInputKw: null } });
});
afterEach(() => test.remove());

const begin = (): Promise<BookedRun> => bookAndBegin(test, office);
const ratingOf = async () =>
  (await test.must('appliances.get', { applianceId: office.applianceId })).appliance.ratedInputKw;
const inCharge = (run: BookedRun) => ({
  visitId: run.visitId,
  runId: run.runId,
  stepKey: 'arrival',
  itemKey: 'licensed-in-charge',
  name: 'Tobias Reyle',
  signatureAttachmentId: null,
});
const record = (run: BookedRun, typedText: string, typedUnit = 'kW') =>
  test.ask('visits.recordPlateRating', {
    visitId: run.visitId,
    runId: run.runId,
    typedText,
    typedUnit,
    basis: 'gross',
  });

describe('an appliance whose rating is not on file', () => {
  it('is a question beside whoever may be sent, and keeps nobody from being booked', async () => {
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    const people = await test.must('visits.whoMay', { jobIds: [jobId], on: '2026-03-04' });
    const technician = people.find(({ staffId }) => staffId === office.technicianId);
    expect(technician?.problem).toBeNull();
    expect(technician?.obstacles).toContainEqual({ code: 'rating-unknown' });
    const helper = people.find(({ staffId }) => staffId === office.helperId);
    expect(helper?.problem).toMatchObject({ why: 'no-licence' });
  });

  it('is begun, and waits with the signature of the one in charge until the plate was read; what is no rating changes nothing', async () => {
    const run = await begin();
    await test.must('visits.openStep', { visitId: run.visitId, runId: run.runId, stepKey: 'arrival' });
    expect(await test.ask('visits.signOff', inCharge(run))).toMatchObject(WAITS);
    for (const [typed, code] of [
      ['', 'empty'],
      ['twenty', 'not-a-number'],
      ['>25', 'not-a-number'],
      ['25000', 'beyond-possible'],
    ] as const)
      expect(await record(run, typed)).toMatchObject({ error: { code: 'cannot-read', data: { problem: { code } } } });
    expect(await ratingOf()).toBeNull();
    expect(await record(run, '85,3', 'MBH')).toMatchObject({ ok: true });
    expect(await ratingOf()).toBeCloseTo(25, 1);
    expect(await test.ask('visits.signOff', inCharge(run))).toMatchObject({ ok: true });
    // Two numbers for one plate need a look: the file is changed in the file.
    expect(await record(run, '30')).toMatchObject({ error: { code: 'rating-on-file' } });
  });

  it('keeps a make-safe shut as well, and turns out to be larger than the licence allows', async () => {
    const run = await begin();
    const { makeSafeId } = await test.must('makeSafes.open', {
      applianceId: office.applianceId,
      visitId: run.visitId,
      what: 'gas smell',
    });
    const close = { makeSafeId, reason: 'union nut tightened, tight at 50 mbar for five minutes' };
    expect(await test.ask('makeSafes.close', close)).toMatchObject(WAITS);
    await record(run, '150');
    expect(await test.ask('makeSafes.close', close)).toMatchObject({ error: { data: { why: 'too-large' } } });
    const { people } = await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
    expect(people.find(({ staffId }) => staffId === office.technicianId)).toMatchObject({
      isLicensed: false,
      waitsForRating: false,
    });
  });

  it('is nobody’s question once somebody has a licence without an upper limit', async () => {
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    await test.must('staff.addLicence', {
      staffId: office.technicianId,
      licence: {
        number: 'G1-7',
        issuer: 'Provincial gas board',
        place: 'Nova Scotia',
        licenceClass: 'G1',
        fuel: null,
        maxKw: null,
        validFrom: '2025-01-01',
        validTo: '2027-12-31',
      },
    });
    const run = await begin();
    await test.must('visits.openStep', { visitId: run.visitId, runId: run.runId, stepKey: 'arrival' });
    expect(await test.ask('visits.signOff', inCharge(run))).toMatchObject({ ok: true });
  });
});
