/** A visit cancelled by mistake stands in the diary again, as it was, while its job still waits for it. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

const BOOKING = {
  plannedOn: '2026-03-10',
  plannedFrom: '09:00',
  plannedTo: '12:00',
  startMin: 570,
  durationMin: 90,
  note: 'Key at number 11.',
};

describe('a cancelled visit', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const openJob = async (kind: 'service' | 'startup' = 'service') =>
    (await test.must('jobs.open', { applianceId: office.applianceId, kind, note: null })).jobId;
  const book = async (jobId: string, isPencilled = false) =>
    (
      await test.must('visits.book', {
        ...BOOKING,
        jobIds: [jobId],
        crew: [{ staffId: office.technicianId, role: 'licensed' }],
        isPencilled,
      })
    ).visitId;
  const bringBack = (visitId: string) => test.ask('visits.bringBack', { visitId });

  it('is brought back with its day, people, jobs and note, and the log keeps that it was cancelled', async () => {
    const jobId = await openJob();
    const visitId = await book(jobId);
    const { revision: before, ...planned } = await test.must('visits.get', { visitId });
    expect(await bringBack(visitId)).toMatchObject({ error: { code: 'visit-not-cancelled' } });
    await test.must('visits.cancel', { visitId, reason: 'the wrong Kestrel rang' });
    expect(await test.must('visits.listCancelled', { jobId })).toEqual([
      { visitId, plannedOn: '2026-03-10', startMin: 570, reason: 'the wrong Kestrel rang', crew: ['Tobias Reyle'] },
    ]);
    expect(await bringBack(visitId)).toMatchObject({ ok: true, value: { isPencilled: false } });
    const { revision: after, ...broughtBack } = await test.must('visits.get', { visitId });
    expect(broughtBack).toEqual(planned);
    // A calendar that has taken the cancellation in must see a later state.
    expect(after).toBeGreaterThan(before + 1);
    expect(await test.must('visits.listCancelled', { jobId })).toEqual([]);
    expect((await test.must('jobs.list', {})).map((job) => job.jobId)).not.toContain(jobId);
  });

  it('comes back pencilled where it was, or where readiness is open again', async () => {
    const service = await book(await openJob(), true);
    await test.must('visits.cancel', { visitId: service, reason: 'mistake' });
    expect(await bringBack(service)).toMatchObject({ value: { isPencilled: true } });
    const jobId = await openJob('startup');
    const [job] = await test.must('jobs.list', { unplannedOnly: false, jobIds: [jobId] });
    const answer = (itemKey: string, said: 'yes' | 'no') =>
      test.must('jobs.setReadiness', { jobId, itemKey, answer: said, note: null, confirmedBy: 'builder' });
    for (const itemKey of job?.openReadiness ?? []) await answer(itemKey, 'yes');
    const startup = await book(jobId);
    await test.must('visits.cancel', { visitId: startup, reason: 'mistake' });
    await answer(job?.openReadiness[0] ?? '', 'no');
    expect(await bringBack(startup)).toMatchObject({ value: { isPencilled: true } });
  });

  it('stays away once its job is booked elsewhere, or its crew may not do the work any more', async () => {
    const jobId = await openJob();
    const visitId = await book(jobId);
    await test.must('visits.cancel', { visitId, reason: 'mistake' });
    const other = await book(jobId);
    expect(await bringBack(visitId)).toMatchObject({
      error: { code: 'job-booked-elsewhere', data: { visitId: other } },
    });
    await test.must('visits.cancel', { visitId: other, reason: 'mistake' });
    const { licences } = (await test.must('staff.list', {})).find(({ staffId }) => staffId === office.technicianId) ?? {
      licences: [],
    };
    for (const { licenceId } of licences) await test.must('staff.withdrawLicence', { licenceId, why: 'typed twice' });
    expect(await bringBack(visitId)).toMatchObject({ error: { code: 'needs-licence' } });
    expect((await test.must('visits.get', { visitId })).state).toBe('cancelled');
  });
});
