import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

const WEEKDAY = { fromMin: 480, toMin: 1020, breakFromMin: 720, breakToMin: 750 };
/** A Wednesday. */
const ON = '2026-03-04';

describe('the board, through the operations', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const bookService = async (): Promise<string> => {
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    const { visitId } = await test.must('visits.book', {
      jobIds: [jobId],
      plannedOn: ON,
      plannedFrom: '09:00',
      plannedTo: '11:00',
      startMin: 540,
      durationMin: 105,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      isPromised: true,
      note: null,
    });
    return visitId;
  };

  it('lists the jobs to book in the order of the work without a day beside the board', async () => {
    const opened: string[] = [];
    for (const latestOn of [null, '2026-04-20', '2026-03-20']) {
      const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
      const planning = { priority: 1, wantedFromOn: null, wantedToOn: null, latestWhy: null, expectedMin: null };
      await test.must('jobs.setPlanning', { jobId, ...planning, latestOn, skills: [] });
      opened.push(jobId);
    }
    const listed = (await test.must('jobs.list', {})).map(({ jobId }) => jobId);
    expect(listed).toEqual(opened.toReversed());
    const { unplaced } = await test.must('board.get', { from: ON, to: ON });
    expect(unplaced.map(({ jobId }) => jobId)).toEqual(listed);
  });

  it('keeps hours, base, skills and absences, and says who is away', async () => {
    const staffId = office.technicianId;
    await test.must('staff.setHours', { staffId, hours: [1, 2, 3].map((weekday) => ({ weekday, ...WEEKDAY })) });
    await test.must('staff.setHours', { staffId, hours: [3, 4].map((weekday) => ({ weekday, ...WEEKDAY })) });
    const base = { street: '14 Kelp Lane', postcode: null, city: 'Graven Bay', latitude: 44.618, longitude: -64.031 };
    await test.must('staff.setBase', { staffId, base });
    await test.must('staff.setSkills', { staffId, skills: ['Cascade', 'ladder', 'ladder'] });
    const { absenceId } = await test.must('absences.add', {
      staffId,
      fromOn: '2026-03-04',
      toOn: '2026-03-05',
      fromMin: null,
      toMin: null,
      reason: 'maker’s course',
    });
    const { people, absences } = await test.must('workforce.get', { from: '2026-03-05', to: '2026-03-11' });
    const tobias = people.find((one) => one.staffId === staffId);
    expect(tobias?.hours.map(({ weekday }) => weekday)).toEqual([3, 4]);
    expect(tobias?.skills).toEqual(['cascade', 'ladder']);
    expect(tobias?.base).toEqual(base);
    expect(absences.map((one) => one.absenceId)).toEqual([absenceId]);

    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'startup', note: null });
    const who = async (on: string) =>
      (await test.must('visits.whoMay', { jobIds: [jobId], on, startMin: 540, durationMin: 60 })).find(
        (one) => one.staffId === staffId,
      );
    expect((await who(ON))?.obstacles.map((one) => one.code)).toEqual(['absent', 'no-training']);
    expect((await who('2026-03-06'))?.obstacles.map((one) => one.code)).toEqual(['does-not-work', 'no-training']);
    await test.must('absences.withdraw', { absenceId });
    expect((await who(ON))?.obstacles.map((one) => one.code)).toEqual(['no-training']);
    await test.must('staff.addTraining', {
      staffId,
      training: { maker: 'invented maker', modelLine: 'T', number: null, validFrom: '2025-01-01', validTo: null },
    });
    expect((await who(ON))?.obstacles).toEqual([]);
    // The analyser's calibration ends on 9 November 2026, the licence at the end of 2027.
    // Its pressure port stands in for a manometer.
    expect((await who('2026-11-11'))?.obstacles).toEqual([
      { code: 'no-instrument', kind: 'analyser', isDemanded: false },
      { code: 'no-instrument', kind: 'manometer', isDemanded: false },
    ]);
    expect((await who('2028-01-05'))?.problem?.why).toBe('not-valid-on-day');
  });

  it.each([
    [{ weekday: 1, ...WEEKDAY, toMin: 400 }, 'hours-reversed'],
    [{ weekday: 1, ...WEEKDAY, breakToMin: null }, 'hours-reversed'],
    [{ weekday: 1, ...WEEKDAY, breakFromMin: 100 }, 'hours-reversed'],
  ])('refuses hours that make no day: %j', async (hours, code) => {
    const reply = await test.ask('staff.setHours', { staffId: office.technicianId, hours: [hours] });
    expect(reply).toMatchObject({ ok: false, error: { code } });
  });

  it('shows a visit with its place and what its job asks for, and moves it on its base revision only', async () => {
    const visitId = await bookService();
    const shown = async () =>
      (await test.must('board.get', { from: '2026-03-02', to: '2026-03-08' })).visits.find(
        (visit) => visit.visitId === visitId,
      );
    const before = await shown();
    expect(before).toMatchObject({ latitude: 44.65, startMin: 540, promisedOn: ON, revision: 0 });
    expect(before?.jobs[0]).toMatchObject({ kind: 'service', fuel: 'natural-gas', priority: 1 });
    const move = { visitId, plannedOn: '2026-03-05', startMin: 600, durationMin: 105, moveCrew: null };
    expect(await test.must('visits.place', { ...move, baseRevision: 0 })).toEqual({ revision: 1 });
    const stale = await test.ask('visits.place', { ...move, startMin: 660, baseRevision: 0 });
    expect(stale).toMatchObject({
      ok: false,
      error: { code: 'visit-changed', data: { revision: 1, startMin: 600, crew: ['Tobias Reyle'] } },
    });
    expect(await shown()).toMatchObject({ plannedOn: '2026-03-05', startMin: 600, promisedOn: ON });
  });

  it('moves a visit to another technician only when that one holds the licence, and leaves the helper on it', async () => {
    const visitId = await bookService();
    const place = (fromStaffId: string, toStaffId: string, baseRevision: number) =>
      test.ask('visits.place', {
        visitId,
        baseRevision,
        plannedOn: ON,
        startMin: 540,
        durationMin: 105,
        moveCrew: { fromStaffId, toStaffId },
      });
    expect(await place(office.technicianId, office.helperId, 0)).toMatchObject({
      ok: false,
      error: { code: 'needs-licence' },
    });
    expect(await place(office.helperId, office.technicianId, 0)).toMatchObject({
      ok: false,
      error: { code: 'not-on-crew' },
    });
    await test.must('staff.addLicence', {
      staffId: office.helperId,
      licence: {
        number: 'G2-1',
        issuer: 'Provincial gas board',
        place: 'Nova Scotia',
        licenceClass: 'G2',
        fuel: null,
        maxKw: null,
        validFrom: '2026-01-01',
        validTo: '2026-12-31',
      },
    });
    expect(await place(office.technicianId, office.helperId, 0)).toMatchObject({ ok: true });
    expect((await test.must('visits.get', { visitId })).crew).toMatchObject([
      { staffId: office.helperId, role: 'licensed' },
    ]);
  });

  it('pins and promises, each under the next revision', async () => {
    const visitId = await bookService();
    const pins = { isTechnicianPinned: true, isDayPinned: false, isStartPinned: true };
    expect(await test.must('visits.pin', { visitId, baseRevision: 0, ...pins })).toEqual({ revision: 1 });
    expect(await test.must('visits.promise', { visitId, baseRevision: 1, isPromised: false })).toEqual({ revision: 2 });
    expect(await test.must('visits.get', { visitId })).toMatchObject({ ...pins, promisedOn: null, revision: 2 });
  });

  it('lists what waits by how it presses, with the length it will take', async () => {
    const open = (kind: 'service' | 'repair') =>
      test.must('jobs.open', { applianceId: office.applianceId, kind, note: null });
    const [calm, dated, urgent] = [await open('service'), await open('service'), await open('repair')];
    const plan = {
      priority: 1,
      wantedFromOn: null,
      wantedToOn: null,
      latestOn: null,
      latestWhy: null,
      expectedMin: null,
      skills: [],
    };
    await test.must('jobs.setPlanning', { jobId: dated.jobId, ...plan, latestOn: '2026-03-20', expectedMin: 45 });
    await test.must('jobs.setPlanning', { jobId: urgent.jobId, ...plan, priority: 3, skills: ['cascade'] });
    const { unplaced } = await test.must('board.get', { from: ON, to: ON });
    expect(unplaced.map(({ jobId, suggestedMin }) => [jobId, suggestedMin])).toEqual([
      [urgent.jobId, 120],
      [dated.jobId, 45],
      [calm.jobId, 105],
    ]);
    expect(await test.must('jobs.getPlanning', { jobId: urgent.jobId })).toMatchObject({ skills: ['cascade'] });
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    expect(
      await test.ask('jobs.setPlanning', {
        jobId: calm.jobId,
        ...plan,
        wantedFromOn: '2026-03-09',
        wantedToOn: ON,
      }),
    ).toMatchObject({ ok: false, error: { code: 'dates-reversed' } });
  });
});
