/**
 * Field case F-11, "pressure creeping up after a repair": the vessel's air side was found at 28 psi and let down to
 * 12; cold 12, hot 22, relief valve 30, which used to weep. The computation explains both, if the water side was at
 * zero when it was read.
 */
import { describe, expect, it } from 'vitest';
import { vesselWaterHeld } from '../../domain/hydronics/vessel/vesselGas.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { LITRES_PER_US_GALLON, psiToBar } from '../../domain/quantity/conversions.ts';
import { unwrap } from '../../domain/result.ts';
import { findingOn, findingsOn, reasonsOf } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord, reading, withReadings, withValue } from '../support/recordBuilder.ts';

const gallonsHeld = (preChargePsi: number, pressurePsi: number) =>
  unwrap(
    vesselWaterHeld({
      vesselVolumeL: 4.5 * LITRES_PER_US_GALLON,
      preChargeBarG: psiToBar(preChargePsi),
      pressureBarG: psiToBar(pressurePsi),
    }),
  ) / LITRES_PER_US_GALLON;

describe('F-11: pressure creeping up after a repair', () => {
  it.each([
    [28, 28, 0],
    [28, 30, 0.2],
    [12, 22, 1.2],
    [12, 30, 1.8],
  ])('a vessel charged to %d psi takes %d psi: %d gal', (charge, pressure, gallons) => {
    expect(Math.abs(gallonsHeld(charge, pressure) - gallons)).toBeLessThanOrEqual(0.06);
  });

  const readings = [
    ['vesselPreChargeBarG', null, 12],
    ['reliefSettingBarG', null, 30],
    ['systemPressureBarG', 'cold', 12],
    ['systemPressureBarG', 'hot', 22],
  ] as const;
  const record = readings.reduce<RunRecord>(
    (changed, [quantity, point, psi]) => withValue(changed, quantity, point, psiToBar(psi)),
    {
      ...cleanRecord(),
      site: { ...cleanRecord().site, jurisdiction: 'US', systemHeightM: 5 },
      answers: [],
    },
  );
  const findings = judgeRun({ record, sheet: judgementSheet({ limits: [] }) });

  it('finds 22 psi hot under a 30 psi valve inside, with 8 psi in hand', () => {
    expect(findingOn(findings, 'ceiling:relief-headroom@hot').verdict).toBe('within');
  });

  it('does not count a pre-charge whose water side nobody said was at zero', () => {
    expect(reasonsOf(findingOn(findings, 'limit:vesselPreChargeBarG'))).toEqual(['water-side-not-at-zero']);
  });

  it('would stop where the valve is about to open', () => {
    const higher = withValue(record, 'systemPressureBarG', 'hot', psiToBar(29));
    expect(
      findingOn(judgeRun({ record: higher, sheet: judgementSheet() }), 'ceiling:relief-headroom@hot').verdict,
    ).toBe('stop');
  });

  it('says what share of the vessel is taken by 22 psi and by the valve’s 30, whatever its size', () => {
    const { basis } = findingOn(findings, 'computed:vessel-takes@hot');
    // 1.2 and 1.8 of 4.5 gal.
    expect(Math.abs((basis.result?.value ?? 0) / 100 - 1.2 / 4.5)).toBeLessThanOrEqual(0.06 / 4.5);
    expect(Math.abs(Number(basis.inputs['atReliefPct']) / 100 - 1.8 / 4.5)).toBeLessThanOrEqual(0.06 / 4.5);
  });

  it('compares with the 28 psi that was found before: 0.2 gal by 30 psi', () => {
    const [charge] = record.readings.filter(({ quantity }) => quantity === 'vesselPreChargeBarG');
    if (charge === undefined) throw new Error('no pre-charge in the record');
    const found = { ...charge, readingId: 'found', valueOwn: psiToBar(28), supersededById: charge.readingId };
    const { basis } = findingOn(
      judgeRun({ record: { ...record, readings: [found, ...record.readings] }, sheet: judgementSheet() }),
      'computed:vessel-takes@hot',
    );
    expect(basis.inputs['preChargeBeforeBarG']).toBeCloseTo(psiToBar(28), 9);
    expect(Math.abs(Number(basis.inputs['beforeAtReliefPct']) / 100 - 0.2 / 4.5)).toBeLessThanOrEqual(0.06 / 4.5);
  });

  it('asks for a second hot reading while the water is cooler than it is set to get', () => {
    const at = (supplyC: number, settingC: number) =>
      judgeRun({
        record: withReadings(
          withValue(record, 'supplySetpointC', null, settingC),
          reading({
            quantity: 'supplyC',
            value: supplyC,
            point: 'hot',
            itemKey: 'hot-supply',
            stepKey: 'leaving',
            minutes: 78,
          }),
        ),
        sheet: judgementSheet(),
      });
    expect(findingOn(at(71, 82), 'hot-below-setting')).toMatchObject({ verdict: 'cannot-judge', blocks: [] });
    expect(findingsOn(at(79, 82), 'hot-below-setting')).toEqual([]);
  });
});
