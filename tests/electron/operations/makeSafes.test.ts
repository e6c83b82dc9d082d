import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { tinyPng } from '../../support/wholeJob.ts';

describe('make-safes', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());
  const open = (what: string) =>
    test.must('makeSafes.open', { applianceId: office.applianceId, visitId: null, what }).then((one) => one.makeSafeId);
  const listOf = async () => (await test.must('appliances.get', { applianceId: office.applianceId })).makeSafes;
  const written = {
    isolatedHow: 'gas cock shut and plugged',
    labelNumber: 'L-17',
    toldWhom: 'L. Kestrel',
    deliveredHow: 'by hand, copy by e-mail',
    isRefused: true,
  };

  it('give back all that was written, so that a form opened again does not save blanks over it', async () => {
    const makeSafeId = await open('CO in the room');
    await test.must('makeSafes.describe', { makeSafeId, ...written });
    const [shown] = await listOf();
    expect(shown).toMatchObject(written);
    // What a form opened again would send.
    const { isolatedHow, labelNumber, toldWhom, deliveredHow, isRefused } = shown ?? written;
    await test.must('makeSafes.describe', { makeSafeId, isolatedHow, labelNumber, toldWhom, deliveredHow, isRefused });
    expect((await listOf())[0]).toMatchObject(written);
  });

  it('are written although the visit they were opened in is not on file', async () => {
    const visitId = '018f0000-0000-7000-8000-000000000000';
    await test.must('makeSafes.open', { applianceId: office.applianceId, visitId, what: 'Gas smell' });
    expect(await listOf()).toMatchObject([{ what: 'Gas smell', closedAt: null }]);
  });

  it('are all listed while open, the oldest first, with where they are', async () => {
    const first = await open('CO in the room');
    test.wait(60);
    const second = await open('Vent apart');
    await test.must('makeSafes.describe', { makeSafeId: second, ...written });
    expect(await test.must('makeSafes.list', {})).toMatchObject([
      { makeSafeId: first, what: 'CO in the room', isolatedHow: null, customerName: 'Lowri Kestrel' },
      { makeSafeId: second, what: 'Vent apart', isolatedHow: written.isolatedHow, isRefused: true, city: 'Graven Bay' },
    ]);
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'repair', note: null });
    const jobs = await test.must('jobs.list', {});
    expect(jobs.find((job) => job.jobId === jobId)?.openMakeSafes).toBe(2);
  });

  it('keep photos of what was found and of how it was left, each once, in every place the make-safe is shown', async () => {
    const makeSafeId = await open('Vent apart');
    const put = async (name: string) => {
      const reply = await test.core.putFile(
        { bytes: tinyPng(name), mediaType: 'image/png', fileName: `${name}.png`, takenAt: test.now() },
        'test-window',
      );
      return reply.ok ? reply.attachmentId : '';
    };
    const [joint, label] = [await put('joint'), await put('label')];
    await test.must('makeSafes.attachPhoto', { makeSafeId, attachmentId: joint });
    await test.must('makeSafes.attachPhoto', { makeSafeId, attachmentId: label });
    await test.must('makeSafes.attachPhoto', { makeSafeId, attachmentId: joint });
    expect((await listOf())[0]?.photoIds).toEqual([joint, label]);
    expect(await test.ask('makeSafes.attachPhoto', { makeSafeId, attachmentId: makeSafeId })).toMatchObject({
      ok: false,
      error: { code: 'not-found' },
    });
  });

  it('leave the list only when a licensed person closes them with a reason, and say who it was', async () => {
    const makeSafeId = await open('CO in the room');
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    expect(await test.ask('makeSafes.close', { makeSafeId, reason: 'looks fine' })).toMatchObject({
      ok: false,
      error: { code: 'needs-licence' },
    });
    expect(await test.must('makeSafes.list', {})).toHaveLength(1);
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    for (const reason of ['x', 'ok now', '1 2 3 4', '. . . .'])
      expect(await test.ask('makeSafes.close', { makeSafeId, reason })).toMatchObject({
        ok: false,
        error: { code: 'reason-says-nothing' },
      });
    await test.must('makeSafes.close', { makeSafeId, reason: 'vent rejoined, CO 0 ppm after 20 min' });
    expect(await test.must('makeSafes.list', {})).toEqual([]);
    expect((await listOf())[0]).toMatchObject({ closedByName: 'Tobias Reyle' });
  });
});
