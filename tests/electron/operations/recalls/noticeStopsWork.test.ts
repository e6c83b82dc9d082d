/** A notice taken down in the office reaches the boiler: it must not fire before somebody licensed has settled it. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { RecallFields } from '../../../../electron/contract/recalls.ts';
import { type Office, PIN, setUpOffice } from '../../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../../support/testCore.ts';
import { type BookedRun, bookAndBegin, readStartupNotes, walkRun } from '../../../support/wholeJob.ts';

const NOTICE: RecallFields = {
  title: 'Tag may say the wrong fuel',
  number: 'N-26-07',
  source: 'The maker',
  maker: 'invented MAKER',
  models: ['T24'],
  serialRanges: [{ from: 'TK204000', to: 'TK204417' }],
  altitudeMinM: null,
  altitudeMaxM: 500,
  issuedOn: '2026-02-20',
  whatToDo: 'Do not use the boiler before tag and orifice have been looked at.',
  mayFire: false,
};

describe('a notice about the boiler of a startup', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  let recallId: string;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    recallId = (await test.must('recalls.save', { recallId: null, recall: NOTICE })).recallId;
    run = await bookAndBegin(test, office);
  });
  afterEach(() => test.remove());
  const ref = () => ({ visitId: run.visitId, runId: run.runId });
  const settle = (more: { outcome: 'done' | 'not-affected' | 'refused'; note?: string | null; byId?: string }) =>
    test.ask('recalls.settle', {
      recallId,
      applianceId: office.applianceId,
      on: '2026-03-02',
      note: 'tag changed, orifice 4.20 seen',
      ...more,
    });
  const noticesOfRun = async () => (await test.must('visits.getRun', ref())).record.openNotices;
  const light = () => test.ask('visits.openStep', { ...ref(), stepKey: 'first-fire' });

  it('is part of the run, and shown wherever the boiler is', async () => {
    const open = [expect.objectContaining({ recallId, title: NOTICE.title, doubts: [] })];
    expect(await noticesOfRun()).toEqual(open);
    const { notices } = await test.must('appliances.get', { applianceId: office.applianceId });
    expect(notices).toEqual(open);
    const visit = await test.must('visits.get', { visitId: run.visitId });
    expect(visit.jobs[0]?.openNotices).toEqual(open);
    const board = await test.must('board.get', { from: '2026-03-02', to: '2026-03-02' });
    expect(board.visits[0]?.jobs[0]?.openNotices).toEqual(open);
    const { appliances } = await test.must('customers.get', { customerId: office.customerId });
    expect(appliances[0]?.openNotices).toEqual(open);
    const { appliances: ofSite } = await test.must('sites.get', { siteId: office.siteId });
    expect(ofSite[0]?.openNotices).toEqual(open);
  });

  it('keeps the burner off although the sheet was answered “none”, until it is settled', async () => {
    await expect(walkRun(test, office, run, readStartupNotes(), 'light-off')).rejects.toThrow();
    const { record } = await test.must('visits.getRun', ref());
    expect(record.answers.find(({ itemKey }) => itemKey === 'recalls')?.value).toBe('none');
    expect(await light()).toMatchObject({ ok: false });
    expect(await settle({ outcome: 'not-affected' })).toMatchObject({ ok: true });
    expect(await noticesOfRun()).toEqual([]);
    await walkRun(test, office, run, readStartupNotes(), 'light-off');
    expect(await light()).toMatchObject({ ok: true });
  });

  it('lets the burner be lit where it only informs, and anybody settle it', async () => {
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    await test.must('recalls.save', { recallId, recall: { ...NOTICE, mayFire: true } });
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    expect(await noticesOfRun()).toMatchObject([{ recallId, mayFire: true }]);
    await walkRun(test, office, run, readStartupNotes(), 'light-off');
    expect(await light()).toMatchObject({ ok: true });
    expect(await settle({ outcome: 'done', byId: office.helperId })).toMatchObject({ ok: true });
    expect(await noticesOfRun()).toEqual([]);
  });

  it('keeps a finished startup from being left when it comes in while the burner is on', async () => {
    await settle({ outcome: 'done' });
    await walkRun(test, office, run, readStartupNotes());
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    await test.must('recalls.save', { recallId: null, recall: { ...NOTICE, number: null, title: 'Fan may stop' } });
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    const reply = await test.ask('visits.finish', {
      visitId: run.visitId,
      outcome: 'finished',
      reason: null,
      labourMin: null,
    });
    expect(reply).toMatchObject({ ok: false, error: { code: 'leaving-blocked' } });
    expect(JSON.stringify(reply)).toContain('Fan may stop');
  });

  it('is settled with a reason by somebody licensed, whoever writes it down', async () => {
    const before = test.snapshot();
    expect(await settle({ outcome: 'done', note: null })).toMatchObject({ error: { code: 'reason-missing' } });
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    expect(await settle({ outcome: 'done' })).toMatchObject({ error: { code: 'needs-licence' } });
    expect(await settle({ outcome: 'done', byId: office.helperId })).toMatchObject({
      error: { code: 'needs-licence' },
    });
    expect(await settle({ outcome: 'done', byId: recallId })).toMatchObject({ error: { code: 'not-found' } });
    expect(test.snapshot()).toBe(before);
    expect(await settle({ outcome: 'done', byId: office.technicianId })).toMatchObject({ ok: true });
    expect(await noticesOfRun()).toEqual([]);
  });

  it('stays open when the owner does not want it done, and when its letters are no longer sent', async () => {
    await settle({ outcome: 'refused', note: null });
    expect(await noticesOfRun()).toMatchObject([{ isRefused: true }]);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    await test.must('recalls.close', { recallId, closedOn: '2026-03-02' });
    expect(await noticesOfRun()).toHaveLength(1);
  });

  it('is sealed with what was left open by it, and is a gap of the packet', async () => {
    await test.must('visits.finish', {
      visitId: run.visitId,
      outcome: 'return-needed',
      reason: 'notice',
      labourMin: null,
    });
    await test.must('visits.seal', ref());
    const { gaps } = await test.must('packets.check', { runId: run.runId });
    expect(gaps).toContainEqual(expect.objectContaining({ code: 'notice-open' }));
  });
});
