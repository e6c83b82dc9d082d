/**
 * Entry mistakes in readings, one by one (`tests/catchRate/mistakes/` injects the same); each with an example of the trade's,
 * common practice without a source, and the clean run as the counter-example of every one.
 */

import { describe, expect, it } from 'vitest';
import type { Suggestion, SuggestionCode } from '../../../../domain/judgement/finding.ts';
import { judgeRun } from '../../../../domain/judgement/judgeRun.ts';
import { MISTAKE_RULES } from '../../../../domain/judgement/mistakes/mistakeRules.ts';
import type { ModelSheet } from '../../../../domain/procedure/modelSheet.ts';
import type { RunRecord } from '../../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../../domain/quantity/quantities.ts';
import { calibratedUntil } from '../../../support/calibratedUntil.ts';
import { suggestionCodes } from '../../../support/findings.ts';
import { judgementSheet } from '../../../support/judgementSheet.ts';
import {
  ANALYSER,
  at,
  cleanRecord,
  MANOMETER,
  reading,
  readingIdOf,
  withReading,
  withReadings,
  withValue,
} from '../../../support/recordBuilder.ts';

const sheet = judgementSheet();
const codes = (record: RunRecord, of: ModelSheet = sheet) => suggestionCodes(judgeRun({ record, sheet: of }));
const suggestion = (record: RunRecord, code: SuggestionCode, of: ModelSheet = sheet): Suggestion => {
  const found = judgeRun({ record, sheet: of })
    .flatMap(({ suggestions }) => suggestions)
    .find((one) => one.code === code);
  if (found === undefined) throw new Error(`no ${code}; there is ${codes(record, of).join(', ')}`);
  return found;
};

/** All of a quantity at a point, as it would have been typed. */
function typed(
  record: RunRecord,
  quantity: QuantityKey,
  point: string | null,
  text: string,
  unit: string,
  own: number,
) {
  return withReading(record, { quantity, point }, { typedText: text, typedUnit: unit, valueOwn: own });
}

function flue(record: RunRecord, point: string, values: Partial<Record<QuantityKey, number>>): RunRecord {
  return Object.entries(values).reduce(
    (changed, [quantity, value]) => withValue(changed, quantity as QuantityKey, point, value),
    record,
  );
}

function beside(quantity: QuantityKey, value: number, point = 'high') {
  return reading({
    quantity,
    value,
    point,
    sample: 2,
    itemKey: `combustion-${point}`,
    stepKey: 'combustion',
    minutes: 51.5,
    instrumentId: ANALYSER.instrumentId,
  });
}

const propaneSheet = judgementSheet({ limits: [], relations: [] });
const propane = (record = cleanRecord()): RunRecord => ({
  ...flue(flue(record, 'high', { o2DryVolPct: 5, co2DryVolPct: 10.4 }), 'low', {
    o2DryVolPct: 5.5,
    co2DryVolPct: 10.1,
  }),
  fuel: 'propane',
});
const PSI = 0.0689475729;
const IN_WC = 2.4908891;

describe('the clean run', () => {
  it('raises no question at all', () => {
    expect(codes(cleanRecord())).toEqual([]);
    expect(
      judgeRun({ record: cleanRecord(), sheet }).filter(({ subject }) => /^(mistake|pair):/.test(subject)),
    ).toEqual([]);
  });

  it('has a rule for every row that readings of one run can show', () => {
    expect([...new Set(MISTAKE_RULES.map(({ row }) => row))].sort((one, other) => one - other)).toEqual([
      1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 34, 35,
    ]);
  });
});

describe('O₂ and CO₂ swapped', () => {
  it('asks about O₂ 9.0 and CO₂ 5.0', () => {
    const record = flue(cleanRecord(), 'high', { o2DryVolPct: 9, co2DryVolPct: 5 });
    expect(codes(record)).toContain('o2-co2-swapped');
    expect(suggestion(record, 'o2-co2-swapped').changes.map(({ quantity, toOwn }) => [quantity, toOwn])).toEqual([
      ['o2DryVolPct', 5],
      ['co2DryVolPct', 9],
    ]);
  });

  it('wants a new reading, since the swap would turn an outside into a within', () => {
    const record = flue(cleanRecord(), 'high', { o2DryVolPct: 9, co2DryVolPct: 5 });
    expect(suggestion(record, 'o2-co2-swapped').needsNewReading).toBe(true);
    // Where no limit is on the sheet, nothing gets better by it.
    expect(suggestion(record, 'o2-co2-swapped', propaneSheet).needsNewReading).toBe(false);
  });

  it('is blind near 7.5/7.5, as the trade’s list says', () => {
    expect(codes(flue(cleanRecord(), 'high', { o2DryVolPct: 7.7, co2DryVolPct: 7.5 }))).not.toContain('o2-co2-swapped');
  });

  it('reads the pair again when nothing explains it', () => {
    const findings = judgeRun({ record: flue(cleanRecord(), 'high', { o2DryVolPct: 4, co2DryVolPct: 7 }), sheet });
    expect(findings.find(({ subject }) => subject === 'pair:o2-co2@high')).toMatchObject({
      verdict: 'cannot-judge',
      blocks: ['leaving'],
      suggestions: [],
    });
  });
});

describe('analyser on another fuel', () => {
  it('LP job, O₂ 5.0, CO₂ 9.0: the analyser is on natural gas; read again, never convert', () => {
    const record = flue(propane(), 'high', { o2DryVolPct: 5, co2DryVolPct: 9 });
    expect(suggestion(record, 'analyser-on-other-fuel', propaneSheet)).toMatchObject({
      changes: [],
      needsNewReading: true,
    });
    const finding = judgeRun({ record, sheet: propaneSheet }).find(({ subject }) => subject.includes('analyser-on'));
    expect(finding?.basis.inputs['fuelOfThePair']).toBe('natural-gas');
  });

  it('takes propane for propane', () => {
    expect(codes(propane(), propaneSheet)).toEqual([]);
  });
});

describe('air-free typed as measured', () => {
  const withAirFree = (co: number, airFree: number) =>
    withReadings(
      withReading(
        withReading(cleanRecord(), { quantity: 'o2DryVolPct', point: 'high' }, { valueOwn: 6 }),
        { quantity: 'coPpm', point: 'high' },
        { valueOwn: co },
      ),
      beside('coAirFreePpm', airFree),
    );

  it('O₂ 6.0, CO 140, air-free 100: the other way round', () => {
    const { changes } = suggestion(withAirFree(140, 100), 'air-free-typed-as-measured');
    expect(changes.map(({ quantity, toOwn }) => [quantity, toOwn])).toEqual([
      ['coPpm', 100],
      ['coAirFreePpm', 140],
    ]);
  });

  it('takes 100 and 140 as they are', () => {
    expect(codes(withAirFree(100, 140))).not.toContain('air-free-typed-as-measured');
  });
});

describe('CO in percent', () => {
  it('0.012 is 120 ppm', () => {
    const record = flue(cleanRecord(), 'low', { coPpm: 0.012 });
    expect(suggestion(record, 'percent-not-ppm').changes.map(({ toOwn }) => toOwn)).toEqual([120]);
  });

  it.each([0, 1, 14])('takes %d ppm', (ppm) => {
    expect(codes(flue(cleanRecord(), 'low', { coPpm: ppm }))).not.toContain('percent-not-ppm');
  });
});

describe('over range written as a value', () => {
  it('4000 is the end of this analyser', () => {
    expect(codes(flue(cleanRecord(), 'low', { coPpm: 4000 }))).toContain('over-range-written-as-value');
  });

  it('takes ">4000" for what it is', () => {
    const record = withReading(cleanRecord(), { quantity: 'coPpm', point: 'low' }, { valueOwn: 4000, comparator: '>' });
    expect(codes(record)).not.toContain('over-range-written-as-value');
  });
});

describe('CO/CO₂ mistyped', () => {
  const withRatio = (ratio: number) =>
    withReadings(
      flue(cleanRecord(), 'high', { coPpm: 90, co2DryVolPct: 9, o2DryVolPct: 5 }),
      beside('coCo2Ratio', ratio),
    );

  it('CO 90, CO₂ 9.0, ratio 0.01: it is 0.0010', () => {
    expect(suggestion(withRatio(0.01), 'ratio-mistyped').changes).toMatchObject([{ toOwn: 0.001 }]);
  });

  it('takes 0.0010', () => {
    expect(codes(withRatio(0.001))).not.toContain('ratio-mistyped');
  });
});

describe('decimal point missing', () => {
  it('15 bar for 1.5 and 582 °C for 58.2', () => {
    const pressure = typed(cleanRecord(), 'systemPressureBarG', 'cold', '13', 'bar', 13);
    expect(codes(pressure)).toEqual(expect.arrayContaining(['psi-as-bar']));
    const flueGas = typed(cleanRecord(), 'flueGasC', 'high', '582', '°C', 582);
    expect(suggestion(flueGas, 'decimal-point-missing')).toMatchObject({
      changes: [{ toOwn: 58.2 }],
      needsNewReading: true,
    });
  });
});

describe('°F in a °C field', () => {
  it('supply 140 is beyond what the box takes; 113 °C is 45 °C in Fahrenheit', () => {
    const record = typed(cleanRecord(), 'supplyC', 'high', '113', '°C', 113);
    expect(suggestion(record, 'fahrenheit-in-celsius').changes).toMatchObject([{ toOwn: expect.closeTo(45, 6) }]);
  });

  it('130 °C of flue gas over 47 °C of return is 54 °C', () => {
    const record = typed(cleanRecord(), 'flueGasC', 'high', '130', '°C', 130);
    const { changes, needsNewReading } = suggestion(record, 'fahrenheit-in-celsius');
    expect(changes[0]?.toOwn).toBeCloseTo(54.4, 1);
    expect(needsNewReading).toBe(true);
  });

  it('a supply of 90 over a return of 28 is 32 °C', () => {
    const record = flue(cleanRecord(), 'low', { supplyC: 90, returnC: 28, flueGasC: 33 });
    expect(suggestion(record, 'fahrenheit-in-celsius').changes[0]?.toOwn).toBeCloseTo(32.2, 1);
  });

  it('takes 92 °C supply with 70 °C return', () => {
    expect(codes(flue(cleanRecord(), 'high', { supplyC: 92, returnC: 70, flueGasC: 80 }))).not.toContain(
      'fahrenheit-in-celsius',
    );
  });
});

describe('°C in a °F field', () => {
  it('return 55 °F and supply 60 °F in a hot system', () => {
    const back = typed(cleanRecord(), 'returnC', 'high', '55', '°F', (55 - 32) / 1.8);
    const record = typed(back, 'supplyC', 'high', '60', '°F', (60 - 32) / 1.8);
    const changes = judgeRun({ record, sheet })
      .flatMap(({ suggestions }) => suggestions)
      .filter(({ code }) => code === 'celsius-in-fahrenheit')
      .flatMap((one) => one.changes.map(({ toOwn }) => Math.round(toOwn)));
    expect(new Set(changes)).toEqual(new Set([55, 60]));
  });

  it('takes 140 °F', () => {
    expect(codes(typed(cleanRecord(), 'supplyC', 'high', '140', '°F', 60))).not.toContain('celsius-in-fahrenheit');
  });
});

describe('inches of water and mbar', () => {
  it('natural gas, 7 typed as mbar: 17.4', () => {
    const record = typed(cleanRecord(), 'inletPressureMbarG', 'dynamic', '7', 'mbar', 7);
    const { changes, needsNewReading } = suggestion(record, 'inches-as-mbar');
    expect(changes[0]?.toOwn).toBeCloseTo(17.436, 3);
    expect(needsNewReading).toBe(true);
  });

  it('natural gas, 20 typed as in. w.c. is 49.8 mbar: 20', () => {
    const record = typed(cleanRecord(), 'inletPressureMbarG', 'static', '20', 'in w.c.', 20 * IN_WC);
    expect(suggestion(record, 'mbar-as-inches').changes[0]?.toOwn).toBeCloseTo(20, 6);
  });

  it('takes 7 in. w.c.', () => {
    const record = typed(cleanRecord(), 'inletPressureMbarG', 'dynamic', '7', 'in w.c.', 7 * IN_WC);
    expect(codes(record)).not.toContain('inches-as-mbar');
  });
});

describe('psi, bar and kPa', () => {
  it.each([
    ['12', 'bar', 12, 0.827],
    ['1.2', 'psi', 1.2 * PSI, 1.2],
    ['83', 'psi', 83 * PSI, 0.83],
  ] as const)('%s "%s"', (text, unit, own, meant) => {
    const record = typed(cleanRecord(), 'systemPressureBarG', 'cold', text, unit, own);
    const found = judgeRun({ record, sheet })
      .flatMap(({ suggestions }) => suggestions)
      .filter(({ code }) => code === 'psi-as-bar' || code === 'bar-as-psi');
    expect(found.map(({ changes }) => Number(changes[0]?.toOwn.toFixed(3)))).toContain(meant);
  });

  it('takes 12 psi', () => {
    const record = typed(cleanRecord(), 'systemPressureBarG', 'cold', '12', 'psi', 12 * PSI);
    expect(codes(record)).not.toContain('bar-as-psi');
  });
});

describe('gauge and absolute', () => {
  it('2.3 bar cold under a 3.0 bar valve is 1.3', () => {
    const record = typed(cleanRecord(), 'systemPressureBarG', 'cold', '2.3', 'bar', 2.3);
    expect(suggestion(record, 'absolute-not-gauge').changes[0]?.toOwn).toBeCloseTo(1.287, 3);
  });

  it('26.7 psi under a 30 psi valve is 12.0', () => {
    const american = withValue(cleanRecord(), 'reliefSettingBarG', null, 30 * PSI);
    const record = typed(american, 'systemPressureBarG', 'cold', '26.7', 'psi', 26.7 * PSI);
    expect((suggestion(record, 'absolute-not-gauge').changes[0]?.toOwn ?? 0) / PSI).toBeCloseTo(12, 1);
  });

  it('takes 12 psi under 30 and 1.8 bar under 3', () => {
    const american = withValue(cleanRecord(), 'reliefSettingBarG', null, 30 * PSI);
    expect(codes(typed(american, 'systemPressureBarG', 'cold', '12', 'psi', 12 * PSI))).not.toContain(
      'absolute-not-gauge',
    );
    expect(codes(withValue(cleanRecord(), 'systemPressureBarG', 'cold', 1.8))).not.toContain('absolute-not-gauge');
  });
});

describe('static and dynamic swapped', () => {
  it('static 6.2, dynamic 7.4 in. w.c.', () => {
    const standing = typed(cleanRecord(), 'inletPressureMbarG', 'static', '6.2', 'in w.c.', 6.2 * IN_WC);
    const record = typed(standing, 'inletPressureMbarG', 'dynamic', '7.4', 'in w.c.', 7.4 * IN_WC);
    expect(suggestion(record, 'static-dynamic-swapped').changes).toHaveLength(2);
  });

  it('takes a regulator that wanders by a tenth', () => {
    expect(codes(withValue(cleanRecord(), 'inletPressureMbarG', 'dynamic', 21.3))).not.toContain(
      'static-dynamic-swapped',
    );
  });
});

describe('units of power', () => {
  const plate = (ratedInputKw: number) => ({
    ...cleanRecord(),
    appliance: { ...cleanRecord().appliance, ratedInputKw },
  });
  const hundredTen = judgementSheet({ appliance: { ...sheet.appliance, ratedInputMaxKw: 32.24 } });

  it('110 (thousand) read as Btu/h', () => {
    expect(codes(plate(110 * 0.29307107e-3), hundredTen)).toContain('power-unit');
  });

  it('110 MBH read as kW', () => {
    expect(codes(plate(110), hundredTen)).toContain('power-unit');
  });

  it('takes a plate a little off the model’s', () => {
    expect(codes(plate(29), hundredTen)).not.toContain('power-unit');
  });
});

describe('dial size', () => {
  it.each([
    ['a ½ ft³ dial read as 1', 0.5],
    ['cubic metres for cubic feet', 0.0283168],
  ])('%s', (_, factor) => {
    const clean = withValue(cleanRecord(), 'meterDialM3', 'high', 0.01 / factor);
    expect(suggestion(clean, 'dial-size').changes[0]?.toOwn).toBeCloseTo(0.01, 3);
  });

  it('takes an input 15 % low', () => {
    expect(codes(withValue(cleanRecord(), 'meterSeconds', 'high', 94))).not.toContain('dial-size');
  });
});

describe('heating value', () => {
  const ofSite = (heatingValueMjPerM3: number) => ({
    ...cleanRecord(),
    site: { ...cleanRecord().site, heatingValueMjPerM3 },
  });

  it('10200 Btu/ft³ is 1020', () => {
    expect(codes(ofSite(10200 / 26.8392))).toContain('heating-value-times-ten');
  });

  it('takes 45 MJ/m³', () => {
    expect(codes(ofSite(44))).not.toContain('heating-value-times-ten');
  });
});

describe('digits swapped', () => {
  const rate = (m3PerH: number, text: string) =>
    withReadings(cleanRecord(), {
      ...reading({
        quantity: 'typedGasRateM3PerH',
        value: m3PerH,
        itemKey: 'rate',
        stepKey: 'combustion',
        minutes: 55,
        point: 'high',
      }),
      typedText: text,
    });

  it('2.24 m³/h carried as 2.42', () => {
    expect(suggestion(rate(2.42, '2.42'), 'digits-swapped').changes).toMatchObject([{ toOwn: 2.24 }]);
  });

  it('takes 2.24', () => {
    expect(codes(rate(2.24, '2.24'))).not.toContain('digits-swapped');
  });

  it('CO₂ 8.9 written as 9.8 beside an O₂ of 5.3', () => {
    const record = typed(flue(cleanRecord(), 'low', { o2DryVolPct: 5.3 }), 'co2DryVolPct', 'low', '9.8', '%', 9.8);
    const meant = judgeRun({ record, sheet })
      .flatMap(({ suggestions }) => suggestions)
      .filter(({ code }) => code === 'digits-swapped')
      .flatMap(({ changes }) => changes.map(({ toOwn }) => toOwn));
    // O2 3.5 would fit as well; both are offered.
    expect([...new Set(meant)].sort()).toEqual([3.5, 8.9]);
  });
});

describe('supply and return swapped', () => {
  it('supply 48, return 62 while firing', () => {
    const record = flue(cleanRecord(), 'high', { supplyC: 48, returnC: 62, flueGasC: 64 });
    expect(suggestion(record, 'supply-return-swapped').changes.map(({ toOwn }) => toOwn)).toEqual([62, 48]);
  });
});

describe('flue gas below return', () => {
  it('flue 38, return 55 at high fire', () => {
    expect(codes(flue(cleanRecord(), 'high', { flueGasC: 38, returnC: 55 }))).toContain('flue-below-return');
  });

  it('takes a few degrees, and low fire', () => {
    expect(codes(flue(cleanRecord(), 'high', { flueGasC: 44, returnC: 47.5 }))).not.toContain('flue-below-return');
    expect(codes(flue(cleanRecord(), 'low', { flueGasC: 33, returnC: 41 }))).not.toContain('flue-below-return');
  });
});

describe('read before steady', () => {
  it('40 seconds after lighting', () => {
    expect(codes({ ...cleanRecord(), firingPoints: [{ firingPoint: 'high', reachedAt: at(50.8) }] })).toContain(
      'read-before-steady',
    );
  });

  it('before the tuning run was over', () => {
    expect(codes({ ...cleanRecord(), tunings: [] })).toContain('read-before-steady');
  });
});

describe('analyser not zeroed', () => {
  it.each([
    ['freshAirO2VolPct', 20.2],
    ['freshAirCoPpm', -8],
    ['freshAirCoPpm', 15],
  ] as const)('%s %d', (quantity, value) => {
    expect(codes(withValue(cleanRecord(), quantity, null, value))).toContain('analyser-not-zeroed');
  });
});

describe('analyser out of date', () => {
  it('due 3 March, read 9 April', () => {
    const spring = (iso: string) => iso.replace('2026-10-06', '2027-04-09');
    const record = cleanRecord();
    const later = {
      ...record,
      readings: record.readings.map((one) => ({ ...one, measuredAt: spring(one.measuredAt) })),
    };
    expect(codes(later)).toContain('instrument-out-of-date');
  });

  it('takes a reading made before the date, whenever it is looked at', () => {
    expect(
      codes({
        ...cleanRecord(),
        instruments: [{ ...ANALYSER, calibrations: calibratedUntil('2026-10-06') }, MANOMETER],
      }),
    ).toEqual([]);
  });
});

describe('high and low swapped', () => {
  it('a "low" flue hotter over return than "high"', () => {
    const low = flue(cleanRecord(), 'low', { flueGasC: 58, returnC: 47, supplyC: 62 });
    const record = flue(low, 'high', { flueGasC: 44, returnC: 41, supplyC: 48 });
    expect(codes(record)).toContain('high-low-swapped');
  });

  it('a faster fan at low fire', () => {
    const record = withReadings(cleanRecord(), beside('fanSpeedRpm', 2100, 'high'), beside('fanSpeedRpm', 5600, 'low'));
    expect(codes(record)).toContain('high-low-swapped');
  });
});

describe('copied from the other firing point', () => {
  it('both rates identical to the digit', () => {
    const same = { o2DryVolPct: 4.9, co2DryVolPct: 9.1, coPpm: 62, flueGasC: 58.4, supplyC: 62, returnC: 47.5 };
    expect(codes(flue(flue(cleanRecord(), 'high', same), 'low', same))).toContain('copied-readings');
  });

  it('takes one quantity that happens to be the same', () => {
    expect(codes(flue(cleanRecord(), 'low', { o2DryVolPct: 4.9, co2DryVolPct: 9.1 }))).not.toContain('copied-readings');
  });
});

describe('a serial off the maker’s pattern', () => {
  it('offers what the plate may say', () => {
    const record = { ...cleanRecord(), appliance: { ...cleanRecord().appliance, serial: 'AB12345O7' } };
    const finding = judgeRun({ record, sheet }).find(({ subject }) => subject === 'mistake:serial-confusable');
    expect(finding?.basis.inputs).toMatchObject({ serial: 'AB12345O7', lookAlikes: 'AB1234507' });
    expect(finding?.blocks).toEqual(['registration']);
  });
});

describe('fields swapped', () => {
  it('pH 2.1 and inhibitor 8.3', () => {
    const record = withValue(withValue(cleanRecord(), 'waterPh', 'after', 2.1), 'inhibitorPct', 'after', 8.3);
    expect(suggestion(record, 'fields-swapped').changes.map(({ toOwn }) => toOwn)).toEqual([8.3, 2.1]);
  });
});

describe('blank read as zero', () => {
  it('CO blank stored as 0', () => {
    const record = withReading(cleanRecord(), { quantity: 'coPpm', point: 'low' }, { valueOwn: 0, typedText: '' });
    expect(codes(record)).toContain('blank-as-zero');
  });

  it('takes a CO of 0 that somebody typed, and nothing at all for nothing', () => {
    const zero = withReading(cleanRecord(), { quantity: 'coPpm', point: 'low' }, { valueOwn: 0, typedText: '0' });
    expect(codes(zero)).not.toContain('blank-as-zero');
    expect(codes(withValue(cleanRecord(), 'coPpm', 'low', null))).not.toContain('blank-as-zero');
  });
});

describe('every suggestion', () => {
  it('names readings that are there, and never changes anything by itself', () => {
    const record = flue(cleanRecord(), 'high', { o2DryVolPct: 9, co2DryVolPct: 5 });
    const ids = new Set(record.readings.map(({ readingId }) => readingId));
    const before = JSON.stringify(record);
    const changes = judgeRun({ record, sheet }).flatMap(({ suggestions }) => suggestions.flatMap((one) => one.changes));
    expect(changes).not.toEqual([]);
    for (const { readingId } of changes) expect(ids).toContain(readingId);
    expect(JSON.stringify(record)).toBe(before);
    expect(ids).toContain(readingIdOf('o2DryVolPct', 'high', 2));
  });
});
