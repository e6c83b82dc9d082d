/** Answers of weeks ago: said of the job, on the board and on the day sheet, forbidding nothing, and fresh again with one press. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

const DAY_S = 86_400;
const VISIT_ON = '2026-03-20';

let test: TestCore;
let office: Office;
beforeEach(async () => {
  test = openTestCore();
  office = await setUpOffice(test);
});
afterEach(() => test.remove());

it('asks again shortly before the visit for what was answered weeks ago, and no earlier', async () => {
  const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'startup', note: null });
  for (const { itemKey } of (await test.must('jobs.getReadiness', { jobId })).items)
    await test.must('jobs.setReadiness', {
      jobId,
      itemKey,
      answer: 'yes',
      note: `note on ${itemKey}`,
      confirmedBy: 'fitter',
    });
  const { visitId } = await test.must('visits.book', {
    jobIds: [jobId],
    plannedOn: VISIT_ON,
    plannedFrom: null,
    plannedTo: null,
    startMin: 540,
    durationMin: 180,
    crew: [{ staffId: office.technicianId, role: 'licensed' }],
    isPencilled: false,
    note: null,
  });
  const aged = async () => {
    const { aged: answers } = await test.must('jobs.getReadiness', { jobId });
    const [row] = await test.must('jobs.list', { unplannedOnly: false, jobIds: [jobId] });
    expect(row?.agedReadiness).toEqual(answers);
    const { visits } = await test.must('board.get', { from: VISIT_ON, to: VISIT_ON });
    expect(visits[0]?.jobs[0]?.agedReadiness).toEqual(answers);
    return answers;
  };
  expect(await aged()).toEqual([]);
  // The 16th: the visit is four days off, and what holds for a week is two weeks old.
  test.wait(14 * DAY_S);
  await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
  expect(await aged()).toEqual([
    { itemKey: 'power', askedDaysAgo: 14 },
    { itemKey: 'heat-load', askedDaysAgo: 14 },
  ]);
  // The 17th: it can be called about, and is judged as of its day.
  test.wait(DAY_S);
  await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
  const answers = await aged();
  expect(answers.map(({ itemKey, askedDaysAgo }) => `${itemKey} ${askedDaysAgo}`)).toEqual(
    ['access', 'fuel-on-site', 'gas-live', 'power', 'water', 'heat-load'].map((key) => `${key} 18`),
  );
  // Nothing is forbidden by it: the visit stays planned and may be moved.
  expect((await test.must('visits.get', { visitId })).state).toBe('planned');

  await test.must('jobs.askedAgain', { answers: answers.map(({ itemKey }) => ({ jobId, itemKey })) });
  expect(await aged()).toEqual([]);
  const power = (await test.must('jobs.getReadiness', { jobId })).items.find(({ itemKey }) => itemKey === 'power');
  expect(power).toMatchObject({ answer: 'yes', note: 'note on power', confirmedBy: 'fitter', recordedAt: test.now() });
});

it('refuses to freshen what was never answered, and writes none of it', async () => {
  const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'startup', note: null });
  await test.must('jobs.setReadiness', { jobId, itemKey: 'power', answer: 'yes', note: null, confirmedBy: null });
  test.wait(60);
  const before = test.snapshot();
  const reply = await test.ask('jobs.askedAgain', {
    answers: ['power', 'vent'].map((itemKey) => ({ jobId, itemKey })),
  });
  expect(reply).toMatchObject({ ok: false, error: { code: 'no-such-item', data: { itemKey: 'vent' } } });
  expect(test.snapshot()).toBe(before);
});
