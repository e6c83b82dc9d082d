/** Messages about booked visits: booked, soon, on the way; not to who said no; again when the day moves. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

type Which = 'appointment' | 'appointment-reminder' | 'on-the-way';

describe('messages about a booked visit', () => {
  let test: TestCore;
  let office: Office;
  let visitId: string;
  beforeAll(async () => {
    // Noon in Halifax on 2 March.
    test = openTestCore('2026-03-02T16:00:00.000Z');
    office = await setUpOffice(test);
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    const booked = await test.must('visits.book', {
      jobIds: [jobId],
      plannedOn: '2026-03-06',
      plannedFrom: '09:00',
      plannedTo: '12:00',
      durationMin: 90,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      note: null,
    });
    visitId = booked.visitId;
  });
  afterAll(() => test.remove());

  const standing = (which: Which) =>
    test.must('messages.standing', { about: { kind: 'appointments', which }, channel: 'text' });
  const check = async (which: Which) => {
    const { keys } = await standing(which);
    return test.must('messages.check', { keys, channel: 'text' });
  };
  const say = async (granted: boolean) => {
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    return test.must('customers.recordConsent', {
      partyId: party.partyId,
      purpose: 'appointments',
      channel: 'text',
      granted,
      on: test.now().slice(0, 10),
      source: 'on the phone',
    });
  };

  it('confirms it once, as a text that can be copied', async () => {
    expect(await check('appointment')).toMatchObject([
      {
        to: '902 555 0111',
        body: 'Kittiwake Heating: we come to 9 Fathom Street, Graven Bay on Friday, 6 March 2026, between 09:00 and 12:00. If that does not suit you, call 902 555 0142.',
        missing: [],
        leftOutBecause: null,
      },
    ]);
    const { keys } = await standing('appointment');
    const made = await test.must('messages.prepare', { keys, channel: 'text', form: 'one-file' });
    expect(made).toMatchObject({ fileName: 'visits-booked-2026-03-02-texts.txt', preparedCount: 1 });
    const file = await test.core.getFile(made.attachmentId, 'test-window');
    expect(new TextDecoder().decode(file?.bytes)).toMatch(
      /^Lowri Kestrel\r\n902 555 0111\r\n\r\nKittiwake Heating: we/,
    );
    expect(await check('appointment')).toMatchObject([{ leftOutBecause: 'prepared-already' }]);
    const [row] = (await test.must('messages.list', {})).rows;
    expect(row).toMatchObject({ kind: 'appointment', channel: 'text', aboutOn: '2026-03-06' });
  });

  it('goes to nobody who said no to it, and to them again once they say yes', async () => {
    await say(false);
    expect(await standing('appointment')).toMatchObject({ total: 0 });
    await say(true);
    expect(await standing('appointment')).toMatchObject({ total: 1 });
  });

  it('shows a field that is missing before anything is sent', async () => {
    await test.must('messageTemplates.save', {
      kind: 'appointment',
      channel: 'text',
      language: 'en',
      subject: 'Visit',
      body: 'The latest day is {{latestOn}}.',
    });
    expect(await check('appointment')).toMatchObject([{ missing: ['latestOn'], leftOutBecause: 'missing-fields' }]);
    await test.must('messageTemplates.reset', { kind: 'appointment', channel: 'text', language: 'en' });
  });

  it('reminds three days before and again the day before, and says who comes on the day', async () => {
    expect(await standing('appointment-reminder')).toMatchObject({ total: 0 });
    test.wait(86_400);
    const { keys } = await standing('appointment-reminder');
    await test.must('messages.prepare', { keys, channel: 'text', form: 'one-file' });
    test.wait(86_400);
    expect(await standing('appointment-reminder')).toMatchObject({ total: 1, preparedCount: 1 });
    test.wait(86_400);
    expect(await standing('appointment-reminder')).toMatchObject({ total: 1, preparedCount: 0 });
    expect(await standing('on-the-way')).toMatchObject({ total: 0 });
    test.wait(86_400);
    const [onTheWay] = await check('on-the-way');
    expect(onTheWay?.body).toContain('Tobias Reyle is on the way to 9 Fathom Street, Graven Bay.');
  });

  it('stands no longer once it is cancelled', async () => {
    await test.must('visits.cancel', { visitId, reason: 'away' });
    for (const which of ['appointment', 'appointment-reminder', 'on-the-way'] as const)
      expect(await standing(which)).toMatchObject({ total: 0 });
  });
});
