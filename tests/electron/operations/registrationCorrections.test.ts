/** A registration handed in or confirmed with a wrong day or number, or by mistake: put right or taken back, with a reason. */
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storePath } from '../../../db/openStore.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin } from '../../support/wholeJob.ts';

describe('a registration marked wrong', () => {
  let test: TestCore;
  let office: Office;
  let applianceId: string;
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    applianceId = office.applianceId;
    const { runId } = await bookAndBegin(test, office);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    // What a final packet leaves behind: drawing one is not what this is about.
    const { attachmentId } = await test.must('daySheets.build', { staffId: office.technicianId, on: '2026-03-02' });
    const raw = new Database(storePath(test.folder));
    raw
      .prepare(
        "INSERT INTO issued_documents (id, kind, run_id, attachment_id, is_draft, issued_by_id, issued_at) VALUES ('d1', 'packet-pdf', ?, ?, 0, ?, ?)",
      )
      .run(runId, attachmentId, office.ownerId, test.now());
    raw.close();
  });
  afterAll(() => test.remove());

  const shown = async () => {
    const { state, submittedOn, confirmedOn, number, note, takenBackWhy } = await test.must('registrations.get', {
      applianceId,
    });
    return { state, submittedOn, confirmedOn, number, note, takenBackWhy };
  };
  const correct = (change: object) =>
    test.ask('registrations.correct', {
      applianceId,
      submittedOn: '2026-03-01',
      note: 'web form',
      confirmation: null,
      why: 'a day too late',
      ...change,
    });

  it('is put right or taken back a step at a time, and the change log keeps each', async () => {
    expect(await correct({})).toMatchObject({ error: { code: 'not-submitted' } });
    await test.must('registrations.submit', { applianceId, submittedOn: '2026-03-02', note: 'post' });

    expect(await correct({ why: ' ' })).toMatchObject({ error: { code: 'bad-input' } });
    expect(await correct({ submittedOn: '2026-03-03' })).toMatchObject({ error: { code: 'day-in-future' } });
    // The office's boiler was installed on 26 February.
    expect(await correct({ submittedOn: '2026-02-25' })).toMatchObject({
      error: { code: 'day-too-early', data: { after: 'installed', on: '2026-02-26' } },
    });
    expect(await correct({ confirmation: { confirmedOn: '2026-03-02', number: 'R-1' } })).toMatchObject({
      error: { code: 'registration-changed' },
    });
    expect(await correct({})).toMatchObject({ ok: true });
    const submitted = {
      state: 'submitted',
      submittedOn: '2026-03-01',
      confirmedOn: null,
      number: null,
      note: 'web form',
      takenBackWhy: 'a day too late',
    };
    expect(await shown()).toEqual(submitted);

    await test.must('registrations.confirm', {
      applianceId,
      confirmedOn: '2026-03-02',
      number: 'R-7741',
      proofAttachmentId: null,
    });
    expect(await shown()).toMatchObject({ state: 'confirmed', takenBackWhy: null });
    const wrongNumber = { confirmation: { confirmedOn: '2026-03-02', number: 'R-7714' }, why: 'figures swapped' };
    expect(await correct({ ...wrongNumber, submittedOn: '2026-03-02' })).toMatchObject({ ok: true });
    expect(await shown()).toMatchObject({ state: 'confirmed', number: 'R-7714', takenBackWhy: 'figures swapped' });
    expect(
      await correct({ ...wrongNumber, confirmation: { confirmedOn: '2026-02-28', number: 'R-7714' } }),
    ).toMatchObject({ error: { code: 'day-too-early', data: { after: 'submitted' } } });

    const takeBack = (step: 'submitted' | 'confirmed', why: string) =>
      test.ask('registrations.takeBack', { applianceId, step, why });
    expect(await takeBack('submitted', 'wrong boiler')).toMatchObject({ error: { code: 'registration-changed' } });
    expect(await takeBack('confirmed', 'of another boiler')).toMatchObject({ ok: true });
    expect(await shown()).toMatchObject({
      state: 'submitted',
      submittedOn: '2026-03-02',
      confirmedOn: null,
      number: null,
      takenBackWhy: 'of another boiler',
    });
    expect((await test.must('registrations.list', {})).rows.map((row) => row.applianceId)).toContain(applianceId);
    expect(await takeBack('submitted', 'was never sent')).toMatchObject({ ok: true });
    expect(await shown()).toEqual({
      state: 'recording',
      submittedOn: null,
      confirmedOn: null,
      number: null,
      note: null,
      takenBackWhy: 'was never sent',
    });
    // Its last day counts again.
    expect((await test.must('deadlines.list', { show: 'open' })).rows.map((row) => row.applianceId)).toContain(
      applianceId,
    );
    const { registrationId } = await test.must('registrations.get', { applianceId });
    const log = JSON.stringify(
      await test.must('history.list', { entity: 'registrations', entityId: registrationId ?? '' }),
    );
    for (const kept of ['R-7741', 'R-7714', 'a day too late', 'of another boiler', 'was never sent'])
      expect(log).toContain(kept);
  });
});
