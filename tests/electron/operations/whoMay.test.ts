/** Who may put what into a run: the checks of the operations themselves, whatever a screen offers and whatever a sheet says. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import type { ModelSheet, SheetStep } from '../../../domain/procedure/modelSheet.ts';
import type { InputOf } from '../../../electron/contract/index.ts';
import { type Office, type OfficeOverrides, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { APP_ROOT, openTestCore, type TestCore } from '../../support/testCore.ts';
import { A_BASIS, anItem, aStep, tinySheetFile } from '../../support/tinySheet.ts';
import { type BookedRun, bookAndBegin } from '../../support/wholeJob.ts';

const UNLICENSED = { ok: false, error: { code: 'needs-licence' } };

let test: TestCore;
let office: Office;
let run: BookedRun;
afterEach(() => test.remove());

async function begin(overrides: OfficeOverrides = {}, startAt?: string): Promise<void> {
  test = openTestCore(startAt);
  office = await setUpOffice(test, overrides);
  run = await bookAndBegin(test, office);
}
const signIn = (staffId: string) => test.must('session.signIn', { staffId, pin: PIN });
const at = (stepKey: string, itemKey: string) => ({ visitId: run.visitId, runId: run.runId, stepKey, itemKey });
const open = (stepKey: string) => test.must('visits.openStep', { visitId: run.visitId, runId: run.runId, stepKey });
const answer = (stepKey: string, itemKey: string, value: string) =>
  test.ask('visits.answer', { ...at(stepKey, itemKey), value, reason: null });

/** A sheet of a few steps, as somebody might write one. */
function sheetOf(startup: Parameters<typeof tinySheetFile>[0]): ModelSheet {
  const steps = tinySheetFile(startup) as { startup: SheetStep[] };
  const file = join(APP_ROOT, 'assets/sheets/general-practice-natural-gas.json');
  const general: ModelSheet = JSON.parse(readFileSync(file, 'utf8'));
  return {
    ...general,
    sheetId: 'own-sheet',
    title: 'Own sheet',
    maker: 'Invented maker',
    models: ['T 24'],
    startup: steps.startup,
  };
}

describe('a helper', () => {
  const inAnyonesStep = sheetOf([
    aStep('all', [
      anItem('read', 'inlet', { quantity: 'inletPressureMbarG', point: 'static' }),
      anItem('series', 'flue', { firingPoint: 'high', quantities: ['coPpm'] }),
      anItem('read', 'ph', { quantity: 'waterPh' }),
    ]),
  ]);
  const reading = (
    itemKey: string,
    quantity: string,
    measuredById: string | null,
  ): InputOf<'visits.recordReading'> => ({
    ...at('all', itemKey),
    quantity,
    sample: 1,
    typedText: '8',
    typedUnit: quantity === 'waterPh' ? '' : quantity === 'coPpm' ? 'ppm' : 'mbar',
    notMeasuredReason: null,
    instrumentId: office.analyserId,
    measuredById,
  });

  it('cannot give a gas result in a step that the sheet leaves to anyone, and may type one for the licensed person', async () => {
    await begin({ sheet: inAnyonesStep });
    await open('all');
    await signIn(office.helperId);
    expect(await test.ask('visits.recordReading', reading('inlet', 'inletPressureMbarG', null))).toMatchObject(
      UNLICENSED,
    );
    expect(await test.ask('visits.recordReading', reading('flue', 'coPpm', null))).toMatchObject(UNLICENSED);
    expect(await test.ask('visits.recordReading', reading('ph', 'waterPh', null))).toMatchObject({ ok: true });
    expect(
      await test.ask('visits.recordReading', reading('inlet', 'inletPressureMbarG', office.technicianId)),
    ).toMatchObject({ ok: true });
  });

  it('cannot sign for the licensed person, nor start or end in their place what a licensed step waits for', async () => {
    const sheet = sheetOf([
      aStep(
        'gas',
        [
          anItem('hold', 'zero', { seconds: 60, basis: A_BASIS }),
          anItem('tuning', 'tuning', {
            stages: [{ key: 'high', label: 'High' }],
            postRunWaitS: 0,
            needsCasingClosed: false,
            needsHeatLoadOpen: false,
            basis: A_BASIS,
          }),
          anItem('sign-off', 'signed', { by: 'licensed', mayBeNotPossible: false }),
        ],
        { who: 'licensed' },
      ),
    ]);
    await begin({ sheet });
    await open('gas');
    await test.must('visits.startTuning', at('gas', 'tuning'));
    await signIn(office.helperId);
    const signed = { ...at('gas', 'signed'), name: 'Tobias Reyle', signatureAttachmentId: null };
    expect(await test.ask('visits.signOff', signed)).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    expect(await test.ask('visits.startHold', at('gas', 'zero'))).toMatchObject(UNLICENSED);
    // The owner may do more in the app, and holds no licence either.
    await signIn(office.ownerId);
    expect(await test.ask('visits.signOff', signed)).toMatchObject(UNLICENSED);
    expect(await test.ask('visits.reachTuningStage', { ...at('gas', 'tuning'), stageKey: 'high' })).toMatchObject(
      UNLICENSED,
    );
    expect(await test.ask('visits.finishTuning', at('gas', 'tuning'))).toMatchObject(UNLICENSED);
    // That the load was lost anybody may say.
    expect(await test.ask('visits.interruptTuning', { ...at('gas', 'tuning'), reason: 'load lost' })).toMatchObject({
      ok: true,
    });
    await signIn(office.technicianId);
    // Whatever name is sent: it is signed by whoever is signed in.
    await test.must('visits.signOff', { ...signed, name: 'Somebody Else' });
    const { record } = await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
    expect(record.signOffs).toMatchObject([{ name: 'Tobias Reyle', staffId: office.technicianId }]);
  });
});

describe('a proof by another person', () => {
  const sheet = sheetOf([
    aStep('proof', [anItem('witness', 'licensed', { by: 'licensed' }), anItem('witness', 'anyone', { by: 'anyone' })]),
  ]);

  it('is not given by whoever did it, nor by somebody of the firm without a licence where it takes one', async () => {
    await begin({ sheet });
    await open('proof');
    expect(await answer('proof', 'licensed', 'tobias reyle')).toMatchObject({
      ok: false,
      error: { code: 'witness-is-same', data: { name: 'Tobias Reyle' } },
    });
    expect(await answer('proof', 'anyone', 'Tobias Reyle')).toMatchObject({ ok: false });
    expect(await answer('proof', 'licensed', 'Ines Calloway')).toMatchObject(UNLICENSED);
    expect(await answer('proof', 'anyone', 'Ines Calloway')).toMatchObject({ ok: true });
    // An inspector is no member of the firm.
    expect(await answer('proof', 'licensed', 'Inspector of the gas board')).toMatchObject({ ok: true });
  });
});

describe('a licence counts on the day the visit is made', () => {
  // Valid to the end of 2027.
  const LAST_DAY = '2027-12-31';

  it('does not begin a visit planned for its last day and made on the day after', async () => {
    test = openTestCore(`${LAST_DAY}T14:00:00.000Z`);
    office = await setUpOffice(test);
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'startup', note: null });
    const { items } = await test.must('jobs.getReadiness', { jobId });
    for (const { itemKey } of items)
      await test.must('jobs.setReadiness', { jobId, itemKey, answer: 'yes', note: null, confirmedBy: 'builder' });
    const { visitId } = await test.must('visits.book', {
      jobIds: [jobId],
      plannedOn: LAST_DAY,
      plannedFrom: null,
      plannedTo: null,
      durationMin: 180,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      note: null,
    });
    await signIn(office.technicianId);
    test.wait(86_400);
    expect(await test.ask('visits.begin', { visitId })).toMatchObject({
      ok: false,
      error: { code: 'needs-licence', data: { why: 'not-valid-on-day', on: '2028-01-01' } },
    });
  });

  it('goes on past midnight in a visit that was begun on its last day', async () => {
    // 14:00 in Halifax.
    await begin({}, `${LAST_DAY}T18:00:00.000Z`);
    await open('arrival');
    test.wait(6 * 3600);
    expect(await answer('arrival', 'own-co-alarm', 'yes')).toMatchObject({ ok: true });
    test.wait(6 * 3600);
    const { people } = await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
    expect(people.find(({ staffId }) => staffId === office.technicianId)?.isLicensed).toBe(true);
    expect(
      await test.ask('visits.signOff', {
        ...at('arrival', 'licensed-in-charge'),
        name: 'Tobias Reyle',
        signatureAttachmentId: null,
      }),
    ).toMatchObject({ ok: true });
  });
});
