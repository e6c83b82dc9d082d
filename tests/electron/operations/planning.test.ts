/** The planner through the operations, in its own thread, on a real store: proposed, explained, accepted, or refused whole. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import type { OutputOf } from '../../../electron/contract/index.ts';
import { type Office, setUpHouse, setUpOffice } from '../../support/officeScenario.ts';
import { readShippedSheet } from '../../support/shippedSheets.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

const WEEKDAY = { fromMin: 480, toMin: 1020, breakFromMin: 720, breakToMin: 750 };
/** Monday to Friday; the clock of the test stands on that Monday at nine in the morning. */
const FROM = '2026-03-02';
const TO = '2026-03-06';

describe('the planner, through the operations', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    await test.must('staff.setHours', {
      staffId: office.technicianId,
      hours: [1, 2, 3, 4, 5].map((weekday) => ({ weekday, ...WEEKDAY })),
    });
    await test.must('company.setTravel', { latitude: 44.66, longitude: -63.58, roadFactor: null, speedKmPerH: null });
  });
  afterEach(() => test.remove());

  const openJob = async (latestOn: string | null = null): Promise<string> => {
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    await test.must('jobs.setPlanning', {
      jobId,
      priority: 1,
      wantedFromOn: null,
      wantedToOn: null,
      latestOn,
      latestWhy: null,
      expectedMin: null,
      skills: [],
    });
    return jobId;
  };

  const propose = async (
    mode: 'fill' | 'rebuild' | 'repair',
    rest: { readonly seconds?: number; readonly maxRounds?: number | null } = { maxRounds: 50 },
  ): Promise<OutputOf<'planning.status'>> => {
    const { proposalId } = await test.must('planning.propose', { from: FROM, to: TO, mode, ...rest });
    return untilDone(proposalId);
  };

  const untilDone = async (proposalId: string): Promise<OutputOf<'planning.status'>> => {
    for (;;) {
      const status = await test.must('planning.status', { proposalId });
      if (status.state !== 'running') return status;
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
  };

  const bookAt = async (plannedOn: string, startMin: number, isPromised: boolean): Promise<string> => {
    const { visitId } = await test.must('visits.book', {
      jobIds: [await openJob()],
      plannedOn,
      plannedFrom: null,
      plannedTo: null,
      startMin,
      durationMin: 105,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      isPromised,
      note: null,
    });
    return visitId;
  };

  it('plans waiting jobs around what is placed, changes nothing until accepted, then books them', async () => {
    const held = await bookAt('2026-03-03', 540, true);
    const jobIds = [await openJob('2026-03-04'), await openJob()];
    const before = test.snapshot();
    const proposal = await propose('fill');
    expect(test.snapshot()).toBe(before);
    expect(proposal.state).toBe('done');
    expect(proposal.leftOut).toEqual([]);
    expect(proposal.placedCount).toBe(3);
    expect(proposal.moves.map((move) => move.ref.id).sort()).toEqual(jobIds.toSorted());
    for (const move of proposal.moves) {
      expect(move.from).toBeNull();
      expect(move.ground).not.toBeNull();
      expect(move.to.staffId).toBe(office.technicianId);
      if (move.to.date === FROM) expect(move.to.startMin).toBeGreaterThanOrEqual(540);
    }
    expect(await test.must('planning.accept', { proposalId: proposal.proposalId })).toEqual({ moved: 0, booked: 2 });
    const board = await test.must('board.get', { from: FROM, to: TO });
    expect(board.unplaced).toEqual([]);
    expect(board.visits).toHaveLength(3);
    const kept = board.visits.find((visit) => visit.visitId === held);
    expect([kept?.plannedOn, kept?.startMin, kept?.revision]).toEqual(['2026-03-03', 540, 0]);
    const times = board.visits
      .map((visit) => ({
        on: visit.plannedOn,
        from: visit.startMin ?? 0,
        to: (visit.startMin ?? 0) + visit.durationMin,
      }))
      .sort((a, b) => a.on.localeCompare(b.on) || a.from - b.from);
    times.forEach((one, at) => {
      const next = times[at + 1];
      if (next?.on === one.on) expect(next.from).toBeGreaterThanOrEqual(one.to);
    });
    expect((await test.ask('planning.status', { proposalId: proposal.proposalId })).ok).toBe(false);
  });

  it('says before it is accepted what the board would say of the person afterwards', async () => {
    await test.must('jobs.open', { applianceId: office.applianceId, kind: 'startup', note: null });
    const { proposalId } = await test.must('planning.propose', {
      from: FROM,
      to: TO,
      mode: 'fill',
      maxRounds: 50,
      takesNotReady: true,
    });
    const { moves } = await untilDone(proposalId);
    expect(moves.map(({ toWeigh }) => toWeigh.map(({ code }) => code))).toEqual([['no-training']]);
  });

  it('sends nobody to a startup without the course that its maker’s sheet demands, and names the course', async () => {
    const sheet: ModelSheet = {
      ...readShippedSheet('general-practice-natural-gas.json'),
      sheetId: 'invented-t',
      maker: 'Invented maker',
      models: ['T 24'],
      startupBy: { training: { kind: 'maker', source: 'terms of registration, 2' } },
    };
    const { applianceId } = await setUpHouse(test, { sheet, appliance: { serial: 'TK204418' } }, office.customerId);
    const { jobId } = await test.must('jobs.open', { applianceId, kind: 'startup', note: null });
    const ask = { from: FROM, to: TO, mode: 'fill', maxRounds: 50, takesNotReady: true } as const;
    const first = await untilDone((await test.must('planning.propose', ask)).proposalId);
    const skill = 'training Invented maker T 24';
    expect(first.leftOut.map(({ reasons }) => reasons)).toEqual([
      [{ code: 'nobody-can', isPinned: false, obstacles: [{ obstacle: { code: 'skill-missing', skill }, days: 5 }] }],
    ]);
    const forbidden = { code: 'no-training', maker: 'Invented maker', model: 'T 24', isDemanded: true };
    const who = await test.must('visits.whoMay', { jobIds: [jobId], on: FROM, startMin: 600, durationMin: 60 });
    expect(who.find(({ staffId }) => staffId === office.technicianId)?.obstacles).toEqual([forbidden]);
    const training = { maker: 'Invented maker', modelLine: 'T', number: null };
    await test.must('staff.addTraining', {
      staffId: office.technicianId,
      training: { ...training, validFrom: '2026-03-05', validTo: null },
    });
    const second = await untilDone((await test.must('planning.propose', ask)).proposalId);
    expect(second.moves.map(({ to, toWeigh }) => [to.date >= '2026-03-05', toWeigh])).toEqual([[true, []]]);
  });

  it('waits for a service’s window where it begins in these days; one opened long before comes as it fits', async () => {
    await bookAt('2026-03-03', 540, false);
    const appliance = { serial: 'TK204418' };
    const { applianceId } = await setUpHouse(test, { installedOn: '2025-05-01', appliance }, office.customerId);
    await test.must('jobs.open', { applianceId, kind: 'service', note: null });
    const plannedOn = async (startedOn: string) => {
      const date = { kind: 'started', on: startedOn, precision: 'day', source: 'card' } as const;
      await test.must('appliances.setDate', { applianceId, date });
      const { moves, goals } = await propose('fill');
      expect([moves.length, goals?.daysOutside]).toEqual([1, 0]);
      return moves[0]?.to.date ?? '';
    };
    // Due a year after without a maker's sheet, and offered from 60 days before: from 4 April, then from 4 March.
    expect(await plannedOn('2025-06-03')).toBe('2026-03-03');
    expect((await plannedOn('2025-05-03')) >= '2026-03-04').toBe(true);
  });

  it('books work longer than a day as a visit for each of several days in a row, and moves it by itself no more', async () => {
    const jobId = await openJob('2026-03-06');
    const planning = { wantedFromOn: null, wantedToOn: null, latestOn: '2026-03-06', latestWhy: null, skills: [] };
    await test.must('jobs.setPlanning', { jobId, priority: 1, ...planning, expectedMin: 720 });
    const slots = await test.must('planning.slots', { jobId, from: FROM, to: TO });
    expect([slots.slots, slots.reasons]).toEqual([[], [{ code: 'no-days-in-a-row' }]]);

    const proposal = await propose('fill');
    expect(proposal.leftOut).toEqual([]);
    expect(proposal.moves.map(({ ref, part, to, ground }) => [ref.id, part, to.date, ground])).toEqual([
      // It is nine on Monday already: too late for a whole day.
      [jobId, { number: 1, of: 2 }, '2026-03-03', 'days-in-a-row'],
      [jobId, { number: 2, of: 2 }, '2026-03-04', 'days-in-a-row'],
    ]);
    expect(proposal.moves.reduce((sum, { durationMin }) => sum + durationMin, 0)).toBe(720);
    expect(await test.must('planning.accept', { proposalId: proposal.proposalId })).toEqual({ moved: 0, booked: 2 });
    const board = await test.must('board.get', { from: FROM, to: TO });
    expect(board.unplaced).toEqual([]);
    expect(board.visits.map(({ plannedOn, jobs }) => [plannedOn, jobs[0]?.jobId])).toEqual([
      ['2026-03-03', jobId],
      ['2026-03-04', jobId],
    ]);
    expect((await propose('rebuild')).moves).toEqual([]);

    await test.must('planning.takeBack', { proposalId: proposal.proposalId });
    expect((await test.must('board.get', { from: FROM, to: TO })).unplaced.map((one) => one.jobId)).toEqual([jobId]);
    // Every other day taken: no two in a row are left, and that is said.
    for (const on of ['2026-03-03', '2026-03-05']) await bookAt(on, 540, true);
    expect((await propose('rebuild')).leftOut.map(({ ref, reasons }) => [ref.id, reasons])).toEqual([
      [jobId, [{ code: 'no-days-in-a-row' }]],
    ]);
  });

  it('plans what comes before everything else for the first day, though another is less to drive', async () => {
    await bookAt('2026-03-05', 540, false);
    const jobId = await openJob();
    const planning = { wantedFromOn: null, wantedToOn: null, latestOn: null, latestWhy: null, expectedMin: null };
    const dayOf = async (priority: number) => {
      await test.must('jobs.setPlanning', { jobId, ...planning, priority, skills: [] });
      return (await propose('fill')).moves.map(({ to, ground }) => [to.date, ground]);
    };
    expect(await dayOf(1)).toEqual([['2026-03-05', 'least-travel']]);
    expect(await dayOf(3)).toEqual([[FROM, 'due-window']]);
  });

  it('counts hours of arrival on file as a promise, told or not', async () => {
    const visitId = await bookAt('2026-03-03', 540, false);
    const [visit] = (await test.must('board.get', { from: FROM, to: TO })).visits;
    await test.must('visits.update', {
      visitId,
      baseRevision: visit?.revision ?? -1,
      plannedOn: '2026-03-03',
      plannedFrom: '09:00',
      plannedTo: '10:00',
      durationMin: 105,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
    });
    await test.must('absences.add', {
      staffId: office.technicianId,
      fromOn: '2026-03-03',
      toOn: '2026-03-03',
      fromMin: null,
      toMin: null,
      reason: 'ill',
    });
    const { moves, goals } = await propose('repair');
    expect(moves.map((move) => [move.ref.id, move.movesPromise])).toEqual([[visitId, true]]);
    expect(goals?.promisesMoved).toBe(1);
  });

  it('takes an accepted plan back whole, unless somebody has touched one of its visits since', async () => {
    const moved = await bookAt('2026-03-03', 540, false);
    await test.must('absences.add', {
      staffId: office.technicianId,
      fromOn: '2026-03-03',
      toOn: '2026-03-03',
      fromMin: null,
      toMin: null,
      reason: 'ill',
    });
    const jobId = await openJob();
    const before = await test.must('board.get', { from: FROM, to: TO });
    const first = await propose('rebuild');
    expect(await test.must('planning.accept', { proposalId: first.proposalId })).toEqual({ moved: 1, booked: 1 });
    expect(await test.must('planning.takeBack', { proposalId: first.proposalId })).toEqual({
      movedBack: 1,
      cancelled: 1,
    });
    const after = await test.must('board.get', { from: FROM, to: TO });
    const bare = ({ visits, unplaced }: typeof before) => ({
      visits: visits.map(({ revision: _revision, ...visit }) => visit),
      unplaced,
    });
    expect(bare(after)).toEqual(bare(before));
    expect(after.unplaced.map((job) => job.jobId)).toEqual([jobId]);
    expect((await test.ask('planning.takeBack', { proposalId: first.proposalId })).ok).toBe(false);

    const second = await propose('rebuild');
    await test.must('planning.accept', { proposalId: second.proposalId });
    const visit = (await test.must('board.get', { from: FROM, to: TO })).visits.find((one) => one.visitId === moved);
    await test.must('visits.place', {
      visitId: moved,
      baseRevision: visit?.revision ?? -1,
      plannedOn: '2026-03-06',
      startMin: 600,
      durationMin: 105,
      moveCrew: null,
    });
    const touched = test.snapshot();
    const reply = await test.ask('planning.takeBack', { proposalId: second.proposalId });
    expect(!reply.ok && reply.error.code).toBe('visit-changed');
    expect(test.snapshot()).toBe(touched);
  });

  it('does not keep quiet about an open make-safe where it sends somebody', async () => {
    await openJob();
    await test.must('makeSafes.open', { applianceId: office.applianceId, visitId: null, what: 'CO in the flue' });
    expect((await propose('fill')).moves).toMatchObject([{ openMakeSafes: 1 }]);
  });

  it('moves as little as it can when somebody is ill, and keeps pins', async () => {
    const moved = await bookAt('2026-03-03', 540, true);
    const pinned = await bookAt('2026-03-03', 700, false);
    const { visits } = await test.must('board.get', { from: FROM, to: TO });
    const revision = visits.find((visit) => visit.visitId === pinned)?.revision ?? 0;
    const other = await bookAt('2026-03-05', 600, true);
    await test.must('visits.pin', {
      visitId: pinned,
      baseRevision: revision,
      isTechnicianPinned: true,
      isDayPinned: true,
      isStartPinned: true,
    });
    await test.must('absences.add', {
      staffId: office.technicianId,
      fromOn: '2026-03-03',
      toOn: '2026-03-03',
      fromMin: null,
      toMin: null,
      reason: 'ill',
    });
    const proposal = await propose('repair');
    expect(proposal.moves.map((move) => [move.ref.id, move.movesPromise])).toEqual([[moved, true]]);
    // When it is booked is said too: "at that time" alone would send the dispatcher looking for it.
    expect(proposal.leftOut[0]?.booked).toEqual({ date: '2026-03-03', startMin: 700 });
    expect(proposal.leftOut.map((one) => [one.ref.id, one.reasons])).toEqual([
      [pinned, [{ code: 'nobody-can', isPinned: true, obstacles: [{ obstacle: { code: 'absent' }, days: 1 }] }]],
    ]);
    expect(await test.must('planning.accept', { proposalId: proposal.proposalId })).toEqual({ moved: 1, booked: 0 });
    const after = await test.must('board.get', { from: FROM, to: TO });
    expect(after.visits.find((visit) => visit.visitId === other)?.startMin).toBe(600);
    expect(after.visits.find((visit) => visit.visitId === moved)?.plannedOn).not.toBe('2026-03-03');
  });

  it('is refused whole when a visit, a job or somebody’s hours have changed meanwhile', async () => {
    const visitId = await bookAt('2026-03-03', 540, false);
    const jobId = await openJob();
    await test.must('absences.add', {
      staffId: office.technicianId,
      fromOn: '2026-03-03',
      toOn: '2026-03-03',
      fromMin: null,
      toMin: null,
      reason: 'ill',
    });
    const proposal = await propose('rebuild');
    expect(proposal.moves).toHaveLength(2);
    const accept = async () => {
      const reply = await test.ask('planning.accept', { proposalId: proposal.proposalId });
      return reply.ok ? 'accepted' : reply.error.code;
    };
    const { absenceId } = await test.must('absences.add', {
      staffId: office.technicianId,
      fromOn: FROM,
      toOn: TO,
      fromMin: null,
      toMin: null,
      reason: 'course',
    });
    const before = test.snapshot();
    expect(await accept()).toBe('plan-outdated');
    expect(test.snapshot()).toBe(before);
    await test.must('absences.withdraw', { absenceId });
    await test.must('visits.place', {
      visitId,
      baseRevision: 0,
      plannedOn: '2026-03-06',
      startMin: 600,
      durationMin: 105,
      moveCrew: null,
    });
    expect(await accept()).toBe('visit-changed');
    const again = await propose('fill');
    await test.must('visits.book', {
      jobIds: [jobId],
      plannedOn: '2026-03-05',
      plannedFrom: null,
      plannedTo: null,
      durationMin: 60,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      note: null,
    });
    const reply = await test.ask('planning.accept', { proposalId: again.proposalId });
    expect(!reply.ok && reply.error).toEqual({ code: 'job-changed', data: { jobId } });
  });

  it('plans nothing over visits that a person has put upon each other, and names them', async () => {
    const one = await bookAt('2026-03-03', 540, false);
    const other = await bookAt('2026-03-03', 600, false);
    const jobId = await openJob('2026-03-03');
    const proposal = await propose('fill');
    expect(proposal.moves.map((move) => move.ref.id)).toEqual([jobId]);
    const named = new Map(proposal.leftOut.map(({ ref, reasons }) => [ref.id, reasons]));
    expect(named.get(one)).toEqual([{ code: 'pin-clash', withVisitIds: [other] }]);
    expect(named.get(other)).toEqual([{ code: 'pin-clash', withVisitIds: [one] }]);
    const [move] = proposal.moves;
    const isApart = move?.to.date !== '2026-03-03' || move.to.startMin >= 705;
    expect(isApart).toBe(true);
  });

  it('leaves time for the ways to and from a visit that a person has put where it breaks a rule', async () => {
    // Over the end of the hours at 17:00. The other house is not on the map: between them the assumed 25 minutes.
    await bookAt('2026-03-03', 960, false);
    const site = { street: '2 Tern Lane', latitude: null, longitude: null };
    const { applianceId } = await setUpHouse(test, { site, appliance: { serial: 'AB-2' } }, office.customerId);
    const { jobId } = await test.must('jobs.open', { applianceId, kind: 'service', note: null });
    const day = { from: '2026-03-03', to: '2026-03-03' };
    const { durationMin, slots } = await test.must('planning.slots', { jobId, ...day });
    expect(slots.length).toBeGreaterThan(1);
    for (const slot of slots) expect(slot).toMatchObject({ isBeforeOther: true, isAfterOther: false });
    // The last quarter from which the work and the way are done by then.
    const latestMin = Math.max(...slots.map((slot) => slot.toMin));
    expect(latestMin).toBe(Math.floor((960 - 25 - durationMin) / 15) * 15);
  });

  it('stops when told to, and what it had found can be accepted', async () => {
    await openJob();
    await openJob();
    const { proposalId } = await test.must('planning.propose', { from: FROM, to: TO, mode: 'fill', seconds: 60 });
    expect((await test.ask('planning.accept', { proposalId })).ok).toBe(false);
    for (;;) {
      const status = await test.must('planning.status', { proposalId });
      if (status.goals !== null) break;
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    await test.must('planning.cancel', { proposalId });
    const stopped = await untilDone(proposalId);
    expect(stopped.state).toBe('stopped');
    expect(stopped.elapsedMs).toBeLessThan(30_000);
    expect(await test.must('planning.accept', { proposalId })).toEqual({ moved: 0, booked: 2 });
  });

  it('offers slots to a caller that can be booked as they are', async () => {
    await bookAt('2026-03-03', 540, true);
    const jobId = await openJob('2026-03-03');
    const { durationMin, slots, reasons } = await test.must('planning.slots', { jobId, from: FROM, to: TO });
    expect(reasons).toEqual([]);
    expect(slots.length).toBeGreaterThan(4);
    expect(slots.findIndex((slot) => slot.isLate)).toBeGreaterThan(slots.findLastIndex((slot) => !slot.isLate));
    const beside = slots.find((slot) => slot.date === '2026-03-03' && slot.isAfterOther);
    expect(beside?.fromMin).toBeGreaterThanOrEqual(645);
    const [first] = slots;
    if (first === undefined) throw new Error('a slot expected');
    expect(
      await test.must('visits.whoMay', { jobIds: [jobId], on: first.date, startMin: first.fromMin, durationMin }),
    ).toContainEqual(expect.objectContaining({ staffId: first.staffId, problem: null }));
    await test.must('visits.book', {
      jobIds: [jobId],
      plannedOn: first.date,
      plannedFrom: null,
      plannedTo: null,
      startMin: first.fromMin,
      durationMin,
      crew: [{ staffId: first.staffId, role: 'licensed' }],
      isPencilled: false,
      isPromised: true,
      note: null,
    });
    const none = await test.must('planning.slots', {
      jobId: await openJob(),
      from: '2026-03-07',
      to: '2026-03-08',
    });
    expect(none.slots).toEqual([]);
    expect(none.reasons.length).toBeGreaterThan(0);
  });

  it.each([
    [{ from: '2026-02-01', to: '2026-02-03' }, 'range-in-past'],
    [{ from: '2026-03-05', to: '2026-03-04' }, 'dates-reversed'],
    [{ from: '2026-03-05', to: '2026-06-04' }, 'range-too-long'],
  ])('refuses the range %j', async (range, code) => {
    const reply = await test.ask('planning.propose', { ...range, mode: 'fill' });
    expect(!reply.ok && reply.error.code).toBe(code);
  });
});
