/** Gas from a tank: the site says once that there is no meter, and what a run would time there answers itself, in words and for good. */
import { afterEach, describe, expect, it } from 'vitest';
import { type OfficeOverrides, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { A_BASIS, anItem, aStep, tinySheet } from '../../support/tinySheet.ts';
import { type BookedRun, bookAndBegin } from '../../support/wholeJob.ts';

const REASON = 'No gas meter: the site’s gas comes from a tank';
const sheet = {
  ...tinySheet([
    aStep('pressures', [
      anItem('confirm', 'others-off', { notApplicable: true, meets: ['2.8/clocking'] }),
      anItem('read', 'meter-dial', { quantity: 'meterDialM3' }),
      anItem('read', 'meter-seconds', { quantity: 'meterSeconds' }),
      anItem('read', 'insists', { quantity: 'meterTurns', mayBeNotPossible: false }),
      anItem('read', 'heating-value', { quantity: 'heatingValueMjPerM3' }),
      anItem('read', 'value-for-timing', { quantity: 'heatingValueMjPerM3', meets: ['2.8/clocking'] }),
      anItem('note', 'its-source', { holds: 'text', meets: ['2.8/clocking'] }),
      anItem('hold', 'wait', { seconds: 60, basis: A_BASIS }),
    ]),
  ]),
  models: ['T 24'],
};

let test: TestCore;
let run: BookedRun;
afterEach(() => test.remove());

async function openStep(overrides: OfficeOverrides['gasSupply'] = {}) {
  test = openTestCore();
  const office = await setUpOffice(test, { sheet, gasSupply: overrides });
  run = await bookAndBegin(test, office);
  await test.must('visits.openStep', { visitId: run.visitId, runId: run.runId, stepKey: 'pressures' });
  return recordNow();
}
const recordNow = async () => (await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId })).record;

describe('a step that asks for the meter', () => {
  it('answers those items itself where the gas comes from a tank, each changeable like any other', async () => {
    const before = await openStep({ kind: 'tank', dialM3: null, compensation: null, capacityM3PerH: null });
    expect(
      before.readings.map(({ itemKey, valueOwn, notMeasuredReason }) => [itemKey, valueOwn, notMeasuredReason]),
    ).toEqual([
      ['meter-dial', null, REASON],
      ['meter-seconds', null, REASON],
      ['value-for-timing', null, REASON],
    ]);
    expect(before.answers).toMatchObject([
      { itemKey: 'others-off', value: 'not-applicable', reason: REASON },
      { itemKey: 'its-source', value: null, reason: REASON },
    ]);

    // There is a meter behind the tank after all: its number stands, and opening the step again says nothing over it.
    const ref = { visitId: run.visitId, runId: run.runId, stepKey: 'pressures' };
    await test.must('visits.recordReading', {
      ...ref,
      itemKey: 'meter-seconds',
      quantity: 'meterSeconds',
      sample: 1,
      typedText: '72',
      typedUnit: 's',
      notMeasuredReason: null,
      instrumentId: null,
      measuredById: null,
    });
    await test.must('visits.openStep', ref);
    const after = (await recordNow()).readings.filter(({ supersededById }) => supersededById === null);
    expect(after.map(({ itemKey, valueOwn }) => [itemKey, valueOwn])).toEqual([
      ['meter-dial', null],
      ['value-for-timing', null],
      ['meter-seconds', 72],
    ]);
  });

  it('asks them all where there is a meter', async () => {
    const record = await openStep();
    expect(record.readings).toEqual([]);
    expect(record.answers).toEqual([]);
  });
});
