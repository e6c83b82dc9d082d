import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin, readStartupNotes, walkRun } from '../../support/wholeJob.ts';

describe('a startup from booking to the sealed record, through the operations', () => {
  let test: TestCore;
  beforeEach(() => {
    test = openTestCore();
  });
  afterEach(() => test.remove());

  it('walks every step from the notes, finishes, seals and verifies', async () => {
    const office = await setUpOffice(test);
    const run = await bookAndBegin(test, office);
    const progress = await walkRun(test, office, run, readStartupNotes());
    expect(progress.gates.leaving).toEqual([]);
    expect(progress.gates.registration).toEqual([]);
    expect(progress.nextItem).toBeNull();
    await test.must('visits.finish', { visitId: run.visitId, outcome: 'finished', reason: null, labourMin: 180 });
    const sealed = await test.must('visits.seal', { visitId: run.visitId, runId: run.runId });
    expect(sealed.sha256).toMatch(/^[0-9a-f]{64}$/);
    const verified = await test.must('records.verify', { visitId: run.visitId });
    expect(verified).toMatchObject({ isIntact: true, entries: [{ sequence: 1, problems: [], alterations: [] }] });
    const again = { visitId: run.visitId, outcome: 'return-needed', reason: 'another end', labourMin: 9 } as const;
    expect(await test.ask('visits.finish', again)).toMatchObject({ ok: false, error: { code: 'visit-ended' } });
    const late = await test.ask('visits.answer', {
      visitId: run.visitId,
      runId: run.runId,
      stepKey: 'arrival',
      itemKey: 'gas-smell',
      value: 'smell',
      reason: null,
    });
    expect(late).toMatchObject({ ok: false, error: { code: 'run-sealed' } });
    const registration = await test.must('registrations.get', { applianceId: office.applianceId });
    expect(registration.deadline).toMatchObject({ countedFrom: 'installed', dueOn: '2026-03-28', isAssumed: true });
  });
});
