/** What puts an instrument in date, for which readings, and who may say so. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin, readStartupNotes, tinyPng, walkRun } from '../../support/wholeJob.ts';

let test: TestCore;
let office: Office;

beforeEach(async () => {
  test = openTestCore();
  office = await setUpOffice(test);
});

afterEach(() => test.remove());

const signIn = (staffId: string) => test.must('session.signIn', { staffId, pin: PIN });
const calibrate = (calibratedOn: string, dueOn: string, paperIds: string[] = [], certificate: string | null = null) =>
  test.ask('instruments.addCalibration', {
    instrumentId: office.analyserId,
    calibratedOn,
    dueOn,
    certificate,
    paperIds,
  });

async function putPaper(): Promise<string> {
  const reply = await test.core.putFile(
    { bytes: tinyPng('certificate'), mediaType: 'image/png', fileName: 'certificate.png', takenAt: null },
    'test-window',
  );
  if (!reply.ok) throw new Error(reply.code);
  return reply.attachmentId;
}

describe('a calibration made after the readings', () => {
  it('leaves an analyser that was out of date unproven, and one that was in date proven', async () => {
    const run = await bookAndBegin(test, office);
    await walkRun(test, office, run, readStartupNotes(), 'high-co-steady');
    const { visitId, runId } = run;
    const outOfDate = async () => {
      const { record, sheet } = await test.must('visits.getRun', { visitId, runId });
      return judgeRun({ record, sheet }).filter(
        ({ proof }) => !proof.proven && proof.because.includes('instrument-out-of-date'),
      ).length;
    };
    expect(await outOfDate()).toBe(0);

    // As typed in first, the certificate had run out a week before the visit.
    await signIn(office.ownerId);
    expect(await calibrate('2026-02-20', '2026-02-23', [], 'C-554')).toMatchObject({ ok: true });
    const before = await outOfDate();
    expect(before).toBeGreaterThan(5);
    test.wait(18 * 86_400);
    await signIn(office.ownerId);
    expect(await calibrate('2026-03-20', '2027-03-20', [], 'C-600')).toMatchObject({ ok: true });
    expect(await outOfDate()).toBe(before);
    // In date today all the same.
    expect((await test.must('instruments.list', {}))[0]).toMatchObject({ certificate: 'C-600', isInDate: true });
  });
});

describe('who puts an instrument in date', () => {
  const analyser = { kind: 'analyser', label: 'B', serial: 'B-1', accuracy: {}, rangeMax: {}, keptById: null } as const;

  it('is not the helper', async () => {
    await signIn(office.helperId);
    const refused = { ok: false, error: { code: 'not-allowed' } };
    expect(await calibrate('2026-03-01', '2036-03-01')).toMatchObject(refused);
    expect(await test.ask('instruments.create', analyser)).toMatchObject(refused);
  });

  it('is the technician with a certificate, not on their word alone', async () => {
    await signIn(office.technicianId);
    const refused = { ok: false, error: { code: 'papers-missing' } };
    expect(await calibrate('2026-03-01', '2027-03-01')).toMatchObject(refused);
    expect(await test.ask('instruments.create', analyser)).toMatchObject(refused);
    const paper = await putPaper();
    expect(await calibrate('2026-03-01', '2027-03-01', [paper])).toMatchObject({ ok: true });
    expect(await test.ask('instruments.create', { ...analyser, paperIds: [paper] })).toMatchObject({ ok: true });
    const [listed] = await test.must('instruments.list', {});
    expect(listed?.certificateIds).toEqual([paper]);
  });

  it('is nobody for a day that is still to come', async () => {
    expect(await calibrate('2031-03-01', '2032-03-01')).toMatchObject({ ok: false, error: { code: 'day-in-future' } });
  });
});
