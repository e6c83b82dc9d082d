/** Answers are kept beside one another; as of two engineers whose spillage tests disagree (F-02). */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../../support/wholeJob.ts';

const SMELL = { stepKey: 'arrival', itemKey: 'gas-smell' };

describe('answers of a run', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
    await test.must('visits.openStep', { ...ref(), stepKey: 'arrival' });
  });
  afterEach(() => test.remove());
  const ref = () => ({ visitId: run.visitId, runId: run.runId });
  const say = (value: string | null, reason: string | null = null, instrumentId: string | null = null) =>
    test.ask('visits.answer', { ...ref(), ...SMELL, value, reason, instrumentId });
  const look = () => test.must('visits.getRun', ref());

  it('are all kept, with who, when and with what; the newest counts', async () => {
    await say('smell', null, office.analyserId);
    test.wait(60);
    await say('none');
    const { record } = await look();
    expect(record.answers).toMatchObject([
      { value: 'smell', byId: office.technicianId, instrumentId: office.analyserId, at: '2026-03-02T13:00:00.000Z' },
      { value: 'none', byId: office.technicianId, instrumentId: null, at: '2026-03-02T13:01:00.000Z' },
    ]);
  });

  it('of one instant stay in the order they were given', async () => {
    for (const value of ['smell', 'none', 'smell', 'none', 'smell', 'none']) await say(value);
    expect((await look()).record.answers.map((one) => one.value)).toEqual([
      'smell',
      'none',
      'smell',
      'none',
      'smell',
      'none',
    ]);
  });

  it('that disagree about a safety test stand in the way until a licensed person closes them with a reason', async () => {
    await say('smell');
    test.wait(3600);
    await test.must('session.signIn', { staffId: office.helperId, pin: PIN });
    await say('none');
    const about = async () => {
      const { record, sheet } = await look();
      return judgeRun({ record, sheet }).filter((finding) => finding.subject === SMELL.itemKey);
    };
    expect(await about()).toMatchObject([
      {
        verdict: 'outside',
        basis: { inputs: { failedBy: office.technicianId, passedBy: office.helperId } },
      },
    ]);
    expect(await say('none', 'nothing found with the detector')).toMatchObject({
      ok: false,
      error: { code: 'needs-licence', data: { staffId: office.helperId } },
    });
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    await test.must('visits.answer', {
      ...ref(),
      ...SMELL,
      value: 'none',
      reason: 'open trap sealed, detector at zero',
    });
    expect(await about()).toEqual([]);
    // Once closed, saying the same again opens nothing.
    await say('none');
    expect(await about()).toEqual([]);
  });

  it('name only instruments that are there', async () => {
    expect(await say('none', null, '018f0000-0000-7000-8000-000000000000')).toMatchObject({
      ok: false,
      error: { code: 'not-found' },
    });
  });
});
