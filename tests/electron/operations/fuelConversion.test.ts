/** A conversion lifts the hold before firing, so nothing about it is taken on one typed word. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { InputOf } from '../../../electron/contract/index.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin, readStartupNotes, tinyPng, walkRun } from '../../support/wholeJob.ts';

type Conversion = InputOf<'appliances.recordFuelState'>;

let test: TestCore;
let office: Office;

beforeEach(async () => {
  test = openTestCore();
  office = await setUpOffice(test, { appliance: { plateFuel: 'propane' } });
  await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
});

afterEach(() => test.remove());

async function putFile(fileName: string, mediaType: string, bytes: Uint8Array): Promise<string> {
  const reply = await test.core.putFile({ bytes, mediaType, fileName, takenAt: null }, 'test-window');
  if (!reply.ok) throw new Error(reply.code);
  return reply.attachmentId;
}

async function conversion(other: Partial<Conversion> = {}): Promise<Conversion> {
  return {
    applianceId: office.applianceId,
    fuel: 'natural-gas',
    fromOn: '2026-03-02',
    conversionKit: 'CK-31',
    orifice: '5.2',
    proof: null,
    photoIds: [await putFile('kit.png', 'image/png', tinyPng('kit.png'))],
    ...other,
  };
}

async function refusal(input: Conversion): Promise<string> {
  const before = test.snapshot();
  const reply = await test.ask('appliances.recordFuelState', input);
  expect(test.snapshot()).toBe(before);
  return reply.ok ? 'taken' : reply.error.code;
}

describe('recording a conversion', () => {
  it('is refused to a technician without a licence', async () => {
    const input = await conversion();
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const { staffId } = await test.must('staff.create', {
      name: 'Odell Brack',
      initials: 'OB',
      phone: null,
      email: null,
      roles: ['technician'],
      pin: PIN,
    });
    await test.must('session.signIn', { staffId, pin: PIN });
    expect(await refusal(input)).toBe('needs-licence');
  });

  it('is refused for a day that is still to come', async () => {
    expect(await refusal(await conversion({ fromOn: '2099-01-01' }))).toBe('day-in-future');
    // 23:30 UTC on the 2nd is still the 2nd in Halifax, and the 3rd is to come there.
    test.wait(10.5 * 3600);
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    expect(await refusal(await conversion({ fromOn: '2026-03-03' }))).toBe('day-in-future');
  });

  it('is refused without kit, orifice or photo, and with a paper in place of the photo', async () => {
    expect(await refusal(await conversion({ conversionKit: ' ' }))).toBe('bad-input');
    expect(await refusal(await conversion({ orifice: '' }))).toBe('bad-input');
    expect(await refusal(await conversion({ photoIds: [] }))).toBe('bad-input');
    const paper = await putFile('kit.pdf', 'application/pdf', new TextEncoder().encode('%PDF-1.4\n%%EOF\n'));
    expect(await refusal(await conversion({ photoIds: [paper] }))).toBe('no-photo');
  });

  it('is taken whole, and shown with its photo', async () => {
    const input = await conversion();
    await test.must('appliances.recordFuelState', input);
    const { applianceId, ...shown } = input;
    expect((await test.must('appliances.get', { applianceId })).fuelStates).toEqual([shown]);
  });
});

describe('a plate for another fuel than the site burns', () => {
  it('keeps the burner off until the conversion is proven, and asks for its proof whatever “Converted?” says', async () => {
    const notes = readStartupNotes();
    const booked = await bookAndBegin(test, office);
    const run = { visitId: booked.visitId, runId: booked.runId };
    const firing = async () => {
      const view = await test.must('visits.getRun', run);
      const progress = runProgress({ ...view, steps: 'startup', findings: [], now: test.now() });
      const asked = progress.steps.flatMap(({ items }) => items.map(({ itemKey }) => itemKey));
      return {
        because: progress.gates.firing.filter((one) => one.itemKey === null).flatMap((one) => one.because),
        asked: ['conversion-kit', 'orifice-marking', 'conversion-label', 'conversion-photo'].filter((key) =>
          asked.includes(key),
        ),
        converted: progress.steps.flatMap(({ items }) => items).find(({ itemKey }) => itemKey === 'converted'),
      };
    };
    const mismatch = { code: 'fuel-mismatch', appliance: 'propane', site: 'natural-gas' };
    expect((await firing()).because).toEqual([mismatch]);
    await test.must('appliances.recordFuelState', await conversion());
    expect((await firing()).because).toEqual([]);

    await walkRun(
      test,
      office,
      booked,
      { ...notes, answers: { ...notes.answers, 'plate-fuel': 'propane' } },
      'converted',
    );
    await test.must('visits.answer', {
      ...run,
      stepKey: 'gas-tightness',
      itemKey: 'converted',
      value: 'not-converted',
      reason: null,
    });
    const after = await firing();
    expect(after.asked).toEqual(['conversion-kit', 'orifice-marking', 'conversion-label', 'conversion-photo']);
    expect(after.converted?.because).toEqual([{ code: 'plate-for-other-fuel', plate: 'propane', site: 'natural-gas' }]);
  });

  it('a conversion after the visit’s day, or back to another fuel before it, opens nothing', async () => {
    const { visitId, runId } = await bookAndBegin(test, office);
    const isConverted = async () =>
      (await test.must('visits.getRun', { visitId, runId })).record.appliance.hasConversionRecord;
    test.wait(3 * 86_400);
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    await test.must('appliances.recordFuelState', await conversion({ fromOn: '2026-03-04' }));
    expect(await isConverted()).toBe(false);
    await test.must('appliances.recordFuelState', await conversion({ fromOn: '2026-02-01' }));
    expect(await isConverted()).toBe(true);
    await test.must('appliances.recordFuelState', await conversion({ fuel: 'propane', fromOn: '2026-02-20' }));
    expect(await isConverted()).toBe(false);
  });
});
