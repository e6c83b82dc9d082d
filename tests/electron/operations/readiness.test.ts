import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { tinyPng } from '../../support/wholeJob.ts';

describe('readiness beyond the list', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const openStartup = () => test.must('jobs.open', { applianceId: office.applianceId, kind: 'startup', note: null });
  const pencil = async (jobId: string, isPencilled = true) =>
    test.ask('visits.book', {
      jobIds: [jobId],
      plannedOn: test.now().slice(0, 10),
      plannedFrom: null,
      plannedTo: null,
      startMin: 540,
      durationMin: 180,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled,
      note: null,
    });

  it('pencils a startup with an open item, and refuses to confirm it', async () => {
    const { jobId } = await openStartup();
    expect(await pencil(jobId, false)).toMatchObject({ ok: false, error: { code: 'readiness-open' } });
    const booked = await pencil(jobId);
    expect(booked.ok).toBe(true);
    if (!booked.ok) return;
    const visit = await test.must('visits.get', { visitId: booked.value.visitId });
    const confirm = {
      visitId: visit.visitId,
      baseRevision: visit.revision,
      plannedOn: visit.plannedOn,
      plannedFrom: null,
      plannedTo: null,
      durationMin: 180,
      crew: visit.crew.map(({ staffId, role }) => ({ staffId, role })),
      isPencilled: false,
    };
    expect(await test.ask('visits.update', confirm)).toMatchObject({ ok: false, error: { code: 'readiness-open' } });
    for (const { itemKey } of (await test.must('jobs.getReadiness', { jobId })).items)
      await test.must('jobs.setReadiness', { jobId, itemKey, answer: 'yes', note: null, confirmedBy: 'builder' });
    await test.must('visits.update', confirm);
    expect((await test.must('visits.get', { visitId: visit.visitId })).state).toBe('planned');
    expect(await test.ask('visits.update', confirm)).toMatchObject({ ok: false, error: { code: 'visit-changed' } });
  });

  it('keeps which photos were asked for, of whom, and which came', async () => {
    const { jobId } = await openStartup();
    await test.must('jobs.askPhotos', { jobId, views: ['boiler-front', 'gas-meter'], askedWhom: 'the builder' });
    const put = await test.core.putFile(
      { bytes: tinyPng('front'), mediaType: 'image/png', fileName: 'front.png', takenAt: test.now() },
      'test-window',
    );
    if (!put.ok) throw new Error(put.code);
    await test.must('jobs.receivePhoto', { jobId, view: 'boiler-front', attachmentId: put.attachmentId });
    // Asked again for what has not come: what came stays.
    await test.must('jobs.askPhotos', { jobId, views: ['boiler-front', 'gas-meter'], askedWhom: 'the fitter' });
    expect(await test.must('jobs.getPhotos', { jobId })).toMatchObject([
      { view: 'boiler-front', askedWhom: 'the fitter', attachmentIds: [put.attachmentId] },
      { view: 'gas-meter', receivedAt: null, attachmentIds: [] },
    ]);
  });

  it('ends a visit that could not begin, frees its job, and counts the reason by fitter', async () => {
    await test.must('sites.addRole', {
      siteId: office.siteId,
      party: {
        kind: 'firm',
        name: 'Corrie Pipe & Boiler',
        contactName: null,
        language: null,
        email: null,
        phoneTyped: null,
        street: null,
        postcode: null,
        city: null,
        region: null,
        country: null,
        note: null,
      },
      role: 'fitter',
      fromOn: null,
    });
    const { jobId } = await openStartup();
    const booked = await pencil(jobId);
    if (!booked.ok) throw new Error('not booked');
    const { visitId } = booked.value;
    const waiting = async () => (await test.must('jobs.list', {})).map((job) => job.jobId);
    expect(await waiting()).not.toContain(jobId);
    const trip = { visitId, code: 'no-power' as const, isChargeable: true, note: 'site supply only' };
    await test.must('wastedTrips.record', trip);
    await test.must('wastedTrips.record', { ...trip, code: 'no-gas' });
    expect(await test.must('visits.get', { visitId })).toMatchObject({ state: 'finished', outcome: 'site-not-ready' });
    expect(await waiting()).toContain(jobId);
    const on = test.now().slice(0, 10);
    const report = await test.must('wastedTrips.report', { from: on, to: on, by: 'fitter' });
    expect(report).toMatchObject({
      trips: 1,
      rows: [{ name: 'Corrie Pipe & Boiler', trips: 1, chargeable: 1, codes: [{ code: 'no-gas', count: 1 }] }],
    });
    const builders = await test.must('wastedTrips.report', { from: on, to: on, by: 'builder' });
    expect(builders.rows).toMatchObject([{ partyId: null, trips: 1 }]);
    // The job can be booked again.
    expect((await pencil(jobId)).ok).toBe(true);
  });
});
