import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import { calibratedUntil } from '../../support/calibratedUntil.ts';
import { findingOn, findingsOn, reasonsOf } from '../../support/findings.ts';
import { judgementSheet } from '../../support/judgementSheet.ts';
import {
  ANALYSER,
  at,
  cleanRecord,
  MANOMETER,
  withoutReading,
  withReading,
  withValue,
} from '../../support/recordBuilder.ts';

const sheet = judgementSheet();
const CO2_HIGH = 'limit:co2DryVolPct@high';
const reasons = (record: RunRecord, subject = CO2_HIGH, reopenedAt: string | null = null) =>
  reasonsOf(findingOn(judgeRun({ record, sheet, reopenedAt }), subject));

describe('proof', () => {
  it('needs as many samples as the sheet, as far apart as it says', () => {
    const one = { ...cleanRecord(), readings: cleanRecord().readings.filter(({ sample }) => sample === 1) };
    expect(reasons(one)).toEqual(['too-few-samples']);
    const close = withReading(
      cleanRecord(),
      { quantity: 'co2DryVolPct', sample: 2, point: 'high' },
      { measuredAt: at(50.5) },
    );
    const allClose = ['o2DryVolPct', 'coPpm', 'flueGasC'].reduce(
      (record, quantity) =>
        withReading(record, { quantity: quantity as 'coPpm', sample: 2, point: 'high' }, { measuredAt: at(50.5) }),
      close,
    );
    expect(reasons(allClose)).toEqual(['too-few-samples']);
  });

  it.each([
    ['o2DryVolPct', 5.2],
    ['coPpm', 69],
    ['flueGasC', 61],
  ] as const)('is not there while %s still moves', (quantity, value) => {
    const record = withReading(cleanRecord(), { quantity, point: 'high', sample: 2 }, { valueOwn: value });
    expect(reasons(record)).toEqual(['not-steady']);
  });

  it('takes the sheet’s own deltas as still steady', () => {
    const record = withReading(cleanRecord(), { quantity: 'o2DryVolPct', point: 'high', sample: 2 }, { valueOwn: 5.1 });
    expect(reasons(record)).toEqual([]);
  });

  it('only looks at the last samples: an unsteady start does not hang on', () => {
    const early = cleanRecord()
      .readings.filter(({ point, sample }) => point === 'high' && sample === 1)
      .map((one) => ({
        ...one,
        readingId: `early-${one.readingId}`,
        sample: 0,
        measuredAt: at(48.2),
        valueOwn: (one.valueOwn ?? 0) * 1.2,
      }));
    expect(reasons({ ...cleanRecord(), readings: [...cleanRecord().readings, ...early] })).toEqual([]);
  });

  it('needs the point reached and settled', () => {
    const late = { ...cleanRecord(), firingPoints: [{ firingPoint: 'high', reachedAt: at(49.2) }] };
    expect(reasons(late)).toEqual(['before-settled']);
    expect(reasons({ ...cleanRecord(), firingPoints: [] })).toEqual(['before-settled']);
  });

  it('needs the tuning run over, its wait included, and not interrupted', () => {
    const [tuning] = cleanRecord().tunings;
    if (!tuning) throw new Error('no tuning');
    expect(reasons({ ...cleanRecord(), tunings: [] })).toEqual(['tuning-not-finished']);
    expect(reasons({ ...cleanRecord(), tunings: [{ ...tuning, finishedAt: null }] })).toEqual(['tuning-not-finished']);
    expect(reasons({ ...cleanRecord(), tunings: [{ ...tuning, finishedAt: at(51.2) }] })).toEqual([
      'tuning-not-finished',
    ]);
    expect(reasons({ ...cleanRecord(), tunings: [{ ...tuning, interruptedAt: at(38) }] })).toEqual([
      'tuning-not-finished',
    ]);
    const again = { ...tuning, startedAt: at(46), finishedAt: null };
    expect(reasons({ ...cleanRecord(), tunings: [tuning, again] })).toEqual(['tuning-not-finished']);
  });

  it('compares the calibration date with the day of the reading at the site, not with today', () => {
    const dueOn = (calibrationDueOn: string | null) => ({
      ...cleanRecord(),
      instruments: [{ ...ANALYSER, calibrations: calibratedUntil(calibrationDueOn) }, MANOMETER],
    });
    expect(reasons(dueOn('2026-10-05'))).toEqual(['instrument-out-of-date']);
    expect(reasons(dueOn('2026-10-06'))).toEqual([]);
    expect(reasons(dueOn(null))).toEqual(['instrument-not-calibrated']);
    // 23:30 in Berlin on 5 October is still the 5th there, although UTC says 21:30; 01:00 on the 6th is 23:00 UTC.
    const night = withReading(
      {
        ...cleanRecord(),
        instruments: [ANALYSER, { ...MANOMETER, calibrations: calibratedUntil('2026-10-05') }],
      },
      { quantity: 'inletPressureMbarG', point: 'static' },
      { measuredAt: '2026-10-05T23:00:00Z' },
    );
    expect(reasons(night, 'limit:inletPressureMbarG@static')).toEqual(['instrument-out-of-date']);
  });

  it('is no proof with an instrument that cannot read it, however well calibrated', () => {
    const co = withReading(
      cleanRecord(),
      { quantity: 'co2DryVolPct', point: 'high' },
      { instrumentId: MANOMETER.instrumentId },
    );
    // Nobody zeroed a manometer in clean air, either.
    expect(reasons(co)).toEqual(['instrument-not-zeroed', 'wrong-instrument']);
    const pressure = withReading(
      cleanRecord(),
      { quantity: 'inletPressureMbarG', point: 'static' },
      { instrumentId: ANALYSER.instrumentId },
    );
    const STATIC = 'limit:inletPressureMbarG@static';
    expect(reasons(pressure, STATIC)).toEqual(['wrong-instrument']);
    const withPort = { ...ANALYSER, rangeMax: { ...ANALYSER.rangeMax, inletPressureMbarG: 150 } };
    expect(reasons({ ...pressure, instruments: [withPort, MANOMETER] }, STATIC)).toEqual([]);
  });

  it('is no proof of a gas pressure with a manometer that was never calibrated', () => {
    const never = { ...cleanRecord(), instruments: [ANALYSER, { ...MANOMETER, calibrations: [] }] };
    expect(reasons(never, 'limit:inletPressureMbarG@static')).toEqual(['instrument-not-calibrated']);
    // A stopwatch or a water test kit is not asked for one.
    expect(reasons(never, CO2_HIGH)).toEqual([]);
  });

  it('a calibration made after the reading proves nothing of it, and one that has run out since takes nothing away', () => {
    const old = { calibratedOn: '2025-01-10', dueOn: '2026-01-10', certificate: null };
    const later = { calibratedOn: '2026-10-07', dueOn: '2027-10-06', certificate: null };
    const sameDay = { calibratedOn: '2026-10-06', dueOn: '2027-10-05', certificate: null };
    const good = { calibratedOn: '2025-10-20', dueOn: '2026-10-19', certificate: null };
    const read = (...calibrations: (typeof old)[]) =>
      reasons({ ...cleanRecord(), instruments: [{ ...ANALYSER, calibrations }, MANOMETER] });
    expect(read(old)).toEqual(['instrument-out-of-date']);
    expect(read(old, later)).toEqual(['instrument-out-of-date']);
    expect(read(later)).toEqual(['instrument-not-calibrated']);
    expect(read(old, sameDay)).toEqual([]);
    expect(read(good, later)).toEqual([]);
    // Given out of order, too.
    expect(read(later, good, old)).toEqual([]);
  });

  it.each([
    ['freshAirO2VolPct', 20.2],
    ['freshAirCoPpm', -8],
    ['freshAirCoPpm', 15],
  ] as const)('needs the analyser zeroed in clean air: %s %d', (quantity, value) => {
    const record = withValue(cleanRecord(), quantity, null, value);
    expect(reasons(record)).toEqual(['instrument-not-zeroed']);
    expect(findingOn(judgeRun({ record, sheet }), `zero:${quantity}`)).toMatchObject({
      verdict: 'outside',
      basis: { from: 'practice' },
    });
  });

  it('takes no zero that is missing, of another instrument, after the reading or too old', () => {
    expect(reasons(withoutReading(cleanRecord(), 'freshAirCoPpm'))).toEqual(['instrument-not-zeroed']);
    expect(reasons(withReading(cleanRecord(), { quantity: 'freshAirCoPpm' }, { instrumentId: 'other' }))).toEqual([
      'instrument-not-zeroed',
    ]);
    expect(reasons(withReading(cleanRecord(), { quantity: 'freshAirCoPpm' }, { measuredAt: at(55) }))).toEqual([
      'instrument-not-zeroed',
    ]);
    expect(reasons(withReading(cleanRecord(), { quantity: 'freshAirCoPpm' }, { measuredAt: at(-200) }))).toEqual([
      'instrument-not-zeroed',
    ]);
  });

  it('leaves what was read on the first day its zero of that day when the analyser is zeroed again on the next', () => {
    const zeroedAgain = (hoursLater: number) => {
      const record = cleanRecord();
      const again = record.readings
        .filter(({ quantity }) => quantity.startsWith('freshAir'))
        .map((one) => ({
          ...one,
          readingId: `${one.readingId} again`,
          measuredAt: new Date(Date.parse(one.measuredAt) + hoursLater * 3_600_000).toISOString(),
        }));
      const readings = record.readings.map((one) => {
        const next = again.find(({ readingId }) => readingId === `${one.readingId} again`);
        return next === undefined ? one : { ...one, supersededById: next.readingId };
      });
      return { ...record, readings: [...readings, ...again] };
    };
    expect(reasons(zeroedAgain(26))).toEqual([]);
    // Typed anew an hour after the flue was read: the first was wrong, and proves nothing.
    expect(reasons(zeroedAgain(2))).toEqual(['instrument-not-zeroed']);
  });

  it('counts a pre-charge only with the water side at zero', () => {
    const subject = 'limit:vesselPreChargeBarG';
    expect(reasons(cleanRecord(), subject)).toEqual([]);
    expect(reasons({ ...cleanRecord(), answers: [] }, subject)).toEqual(['water-side-not-at-zero']);
    const no = cleanRecord().answers.map((one) => ({ ...one, value: 'no' }));
    expect(reasons({ ...cleanRecord(), answers: no }, subject)).toEqual(['water-side-not-at-zero']);
  });

  it('lets tightness, room CO and pressure grow old when the run is taken up again', () => {
    expect(reasons(cleanRecord(), 'limit:tightnessDropMbar', at(12 + 13 * 60))).toEqual(['hold-lapsed']);
    expect(reasons(cleanRecord(), 'ceiling:room-co', at(6 + 5 * 60))).toEqual(['hold-lapsed']);
    expect(reasons(cleanRecord(), 'limit:tightnessDropMbar', at(60))).toEqual([]);
    expect(reasons(cleanRecord(), 'limit:tightnessDropMbar')).toEqual([]);
  });

  it('takes no wait whose clock moved, and none that was cut short', () => {
    const [hold] = cleanRecord().holds;
    if (!hold) throw new Error('no hold');
    const jumped = { ...cleanRecord(), holds: [{ ...hold, clockJumped: true }] };
    expect(findingOn(judgeRun({ record: jumped, sheet }), 'de-air')).toMatchObject({
      verdict: 'cannot-judge',
      proof: { proven: false, because: ['clock-jumped'] },
      blocks: ['firing'],
    });
    expect(reasons(jumped, 'limit:systemPressureBarG@cold')).toEqual(['clock-jumped']);
    const again = { ...hold, startedAt: at(31), endedAt: at(36.5) };
    expect(
      findingOn(judgeRun({ record: { ...jumped, holds: [again, ...jumped.holds] }, sheet }), 'de-air').verdict,
    ).toBe('within');
    const short = { ...cleanRecord(), holds: [{ ...hold, endedAt: at(28), requiredS: 1 }] };
    expect(findingOn(judgeRun({ record: short, sheet }), 'de-air').verdict).toBe('outside');
  });

  it('gives every reason, not the first', () => {
    const record = { ...withoutReading(cleanRecord(), 'freshAirO2VolPct'), firingPoints: [], tunings: [] };
    expect(reasons(record)).toEqual(['before-settled', 'instrument-not-zeroed', 'tuning-not-finished']);
  });

  it('joins the reasons of all readings a number was computed from', () => {
    const record = withReading(cleanRecord(), { quantity: 'co2DryVolPct', point: 'low' }, { instrumentId: null });
    expect(reasons(record, 'relation:co2DryVolPct@low-high')).toEqual(['instrument-unknown']);
    expect(findingsOn(judgeRun({ record, sheet }), 'limit:coCo2Ratio@low').every(({ proof }) => !proof.proven)).toBe(
      true,
    );
  });
});
