/** A visit that could not be finished is come back to: the run is taken up again, and what has grown too old is asked once more. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { InputOf } from '../../../electron/contract/index.ts';
import { lapsedOf } from '../../support/lapsedOf.ts';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { type BookedRun, bookAndBegin, readStartupNotes, walkRun } from '../../support/wholeJob.ts';

const A_DAY_S = 86_400;

describe('the return trip', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
    await test.must('visits.openStep', { ...ref(), stepKey: 'arrival' });
    await readRoomCo();
  });
  afterEach(() => test.remove());
  const ref = () => ({ visitId: run.visitId, runId: run.runId });
  const roomCo = {
    stepKey: 'arrival',
    itemKey: 'room-co',
    quantity: 'roomCoPpm',
    sample: 1,
    typedText: '2',
    typedUnit: 'ppm',
    notMeasuredReason: null,
    measuredById: null,
  };
  const readRoomCo = (at: { visitId: string; runId: string } = ref()) =>
    test.ask('visits.recordReading', { ...at, ...roomCo, instrumentId: office.analyserId });
  const end = (outcome: 'return-needed' | 'finished') =>
    test.ask('visits.finish', { visitId: run.visitId, outcome, reason: 'no meter yet', labourMin: null });

  it('is a visit of its own today, with the same crew and the same run, taken up again', async () => {
    await end('return-needed');
    test.wait(A_DAY_S);
    const back = await test.must('visits.beginReturn', { visitId: run.visitId });
    expect(back.visitId).not.toBe(run.visitId);
    expect(back.runs).toEqual([{ jobId: run.jobId, runId: run.runId }]);
    expect(await test.must('visits.get', { visitId: back.visitId })).toMatchObject({
      state: 'started',
      plannedOn: '2026-03-03',
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
    });
    const { record, sheet, reopenedAt } = await test.must('visits.getRun', {
      visitId: back.visitId,
      runId: run.runId,
    });
    expect(record.readings).toHaveLength(1);
    expect(reopenedAt).toBe(test.now());
    const lapsed = lapsedOf({ record, sheet, reopenedAt: reopenedAt ?? '' });
    expect(lapsed).toMatchObject([{ itemKey: 'room-co', lapse: 'roomCo', hours: sheet.lapseHours.roomCo }]);
  });

  it('ends once: how it ended is not said again', async () => {
    await end('return-needed');
    const before = test.snapshot();
    test.wait(60);
    expect(await end('finished')).toMatchObject({
      ok: false,
      error: { code: 'visit-ended', data: { outcome: 'return-needed' } },
    });
    expect(test.snapshot()).toBe(before);
  });

  it('takes what is read after the end; the ended visit takes nothing more', async () => {
    await end('return-needed');
    expect(await readRoomCo()).toMatchObject({
      ok: false,
      error: { code: 'visit-ended', data: { outcome: 'return-needed' } },
    });
    const back = await test.must('visits.beginReturn', { visitId: run.visitId });
    expect(await readRoomCo({ visitId: back.visitId, runId: run.runId })).toMatchObject({ ok: true });
  });

  it('puts the job back among those to book, saying why, until the trip is there', async () => {
    const jobOf = async () => (await test.must('jobs.list', { unplannedOnly: false, jobIds: [run.jobId] }))[0];
    expect(await jobOf()).toMatchObject({ visitId: run.visitId, returnBecause: null });
    await end('return-needed');
    expect(await jobOf()).toMatchObject({ visitId: null, returnBecause: 'return-needed' });
    expect(await test.must('jobs.list', {})).toMatchObject([{ jobId: run.jobId }]);
    const back = await test.must('visits.beginReturn', { visitId: run.visitId });
    expect(await jobOf()).toMatchObject({ visitId: back.visitId, returnBecause: null });
  });

  it('is the one that is booked already, where there is one', async () => {
    await end('return-needed');
    const { visitId } = await test.must('visits.book', {
      jobIds: [run.jobId],
      plannedOn: '2026-03-05',
      plannedFrom: null,
      plannedTo: null,
      durationMin: 60,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      note: null,
    });
    expect(await test.must('visits.beginReturn', { visitId: run.visitId })).toMatchObject({ visitId });
  });

  it('is not made for a visit that goes on', async () => {
    expect(await test.ask('visits.beginReturn', { visitId: run.visitId })).toMatchObject({
      ok: false,
      error: { code: 'no-return-needed' },
    });
  });
});

describe('a visit that never ended, gone on with three days later', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
    await test.must('visits.openStep', { ...ref(), stepKey: 'arrival' });
    await test.must('visits.recordReading', roomCo());
  });
  afterEach(() => test.remove());
  const ref = () => ({ visitId: run.visitId, runId: run.runId });
  const roomCo = (): InputOf<'visits.recordReading'> => ({
    ...ref(),
    stepKey: 'arrival',
    itemKey: 'room-co',
    quantity: 'roomCoPpm',
    sample: 1,
    typedText: '2',
    typedUnit: 'ppm',
    notMeasuredReason: null,
    measuredById: null,
    instrumentId: office.analyserId,
  });
  const view = () => test.must('visits.getRun', ref());
  const answer = () =>
    test.ask('visits.answer', { ...ref(), stepKey: 'arrival', itemKey: 'own-co-alarm', value: 'yes', reason: null });

  it('takes nothing in before it is taken up, and then asks again for what has grown too old', async () => {
    test.wait(3 * A_DAY_S);
    expect(await answer()).toMatchObject({ ok: false, error: { code: 'run-was-left' } });
    const { reopenedAt } = await test.must('visits.takeUp', ref());
    expect(reopenedAt).toBe(test.now());
    expect(await answer()).toMatchObject({ ok: true });
    const { record, sheet } = await view();
    expect(lapsedOf({ record, sheet, reopenedAt: reopenedAt ?? '' })).toMatchObject([{ itemKey: 'room-co' }]);
    await test.must('visits.recordReading', roomCo());
    const again = (await view()).record;
    expect(lapsedOf({ record: again, sheet, reopenedAt: reopenedAt ?? '' })).toEqual([]);
  });

  it('goes on at once after a break in which nothing lapses, and taking it up then changes nothing', async () => {
    test.wait(4 * 3600);
    expect(await test.must('visits.takeUp', ref())).toEqual({ reopenedAt: null });
    expect(await answer()).toMatchObject({ ok: true });
  });

  it('is not left for good to a clock that once was days ahead', async () => {
    test.wait(3 * A_DAY_S);
    await test.must('visits.takeUp', ref());
    // The clock is put right: without the step, what is answered now would count as three days old for ever.
    test.wait(-3 * A_DAY_S + 600);
    expect(await answer()).toMatchObject({ ok: false, error: { code: 'run-was-left' } });
    const { reopenedAt } = await test.must('visits.takeUp', ref());
    expect(reopenedAt).toBe(test.now());
    const { record, sheet } = await view();
    expect(lapsedOf({ record, sheet, reopenedAt: reopenedAt ?? '' })).toEqual([]);
  });

  it('is known only by a visit of its own: another visit lets nothing past what its own has come to', async () => {
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'repair', note: null });
    const { visitId } = await test.must('visits.book', {
      jobIds: [jobId],
      plannedOn: test.now().slice(0, 10),
      plannedFrom: '13:00',
      plannedTo: '15:00',
      durationMin: 60,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      note: null,
    });
    const at = { visitId, runId: run.runId };
    const item = { stepKey: 'arrival', itemKey: 'own-co-alarm', value: 'yes', reason: null };
    const notFound = { ok: false, error: { code: 'not-found' } };
    expect(await test.ask('visits.answer', { ...at, ...item })).toMatchObject(notFound);
    expect(await test.ask('visits.getRun', at)).toMatchObject(notFound);
  });

  it('does not light the burner on what has grown too old, though the step was opened before it was taken up', async () => {
    await walkRun(test, office, run, readStartupNotes(), 'first-flame-at');
    test.wait(3 * A_DAY_S);
    await test.ask('visits.openStep', { ...ref(), stepKey: 'first-fire' });
    await test.must('visits.takeUp', ref());
    const item = { ...ref(), stepKey: 'first-fire', itemKey: 'first-flame-at', value: '10:05', reason: null };
    expect(await test.ask('visits.answer', item)).toMatchObject({ ok: false, error: { code: 'step-not-open' } });
  });

  it('may be put right the morning after when all of it was done on the day', async () => {
    await walkRun(test, office, run, readStartupNotes());
    test.wait(A_DAY_S);
    expect(await test.must('visits.takeUp', ref())).toEqual({ reopenedAt: null });
    expect(await answer()).toMatchObject({ ok: true });
    expect((await view()).reopenedAt).toBeNull();
  });

  it('takes in from paper what was written on the day, without asking for it anew', async () => {
    test.wait(A_DAY_S);
    expect(
      await test.ask('paper.transcribe', {
        ...ref(),
        stepKey: 'arrival',
        itemKey: 'own-co-alarm',
        on: '2026-03-02',
        byId: office.technicianId,
        written: { kind: 'answer', value: 'yes', reason: null, at: '09:20' },
      }),
    ).toMatchObject({ ok: true });
    expect((await view()).reopenedAt).toBeNull();
  });
});
