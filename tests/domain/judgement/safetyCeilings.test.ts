/** Ceilings: sources as printed in `safetyCeilings.ts`; the numbers here are those sources', not the code's. */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import { regionOf } from '../../../domain/judgement/regions.ts';
import { SAFETY_CEILINGS } from '../../../domain/judgement/safetyCeilings.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import { findingOn, findingsOn } from '../../support/findings.ts';
import { judgementSheet } from '../../support/judgementSheet.ts';
import {
  at,
  cleanRecord,
  reading,
  withoutReading,
  withReading,
  withReadings,
  withValue,
} from '../../support/recordBuilder.ts';

const sheet = judgementSheet();
const judge = (record: RunRecord, jurisdiction = 'DE') => judgeRun({ record, sheet, jurisdiction });
const PSI = 0.0689475729;

describe('flue CO', () => {
  it('stops above 400 ppm air-free, uncertainty counted against it', () => {
    // 300 × 20.9 / (20.9 − 4.9) = 392 ppm; the analyser's 5 % and 0.2 % O2 take it over.
    const finding = findingOn(judge(withValue(cleanRecord(), 'coPpm', 'high', 300)), 'ceiling:flue-co-air-free@high');
    expect(finding).toMatchObject({ verdict: 'stop', blocks: ['firing', 'leaving', 'registration'] });
    expect(finding.makeSafe.length).toBeGreaterThan(2);
    expect(finding.basis).toMatchObject({ from: 'ceiling', limit: { max: 400, severity: 'stop' } });
  });

  it('is judged without O₂ where CO as measured is already above', () => {
    const withoutO2 = withoutReading(withoutReading(cleanRecord(), 'o2DryVolPct'), 'co2DryVolPct');
    expect(findingOn(judge(withoutO2), 'ceiling:flue-co-air-free@high')).toMatchObject({
      verdict: 'cannot-judge',
      missing: ['O₂ of the same sample'],
    });
    expect(findingOn(judge(withValue(withoutO2, 'coPpm', 'high', 420)), 'ceiling:flue-co-air-free@high').verdict).toBe(
      'stop',
    );
  });

  it('falls back on CO₂ of the same sample', () => {
    const record = withValue(withoutReading(cleanRecord(), 'o2DryVolPct'), 'coPpm', 'high', 330);
    expect(findingOn(judge(record), 'ceiling:flue-co-air-free@high').verdict).toBe('stop');
  });

  it('refuses air-free above 15 % O₂', () => {
    const finding = findingOn(
      judge(withValue(cleanRecord(), 'o2DryVolPct', 'high', 17)),
      'ceiling:flue-co-air-free@high',
    );
    expect(finding).toMatchObject({ verdict: 'cannot-judge', missing: [expect.stringContaining('15 %')] });
  });

  it('takes ">4000" for at least 4000: a stop, never a measurement', () => {
    const record = withReading(
      cleanRecord(),
      { quantity: 'coPpm', point: 'high' },
      { valueOwn: 4000, typedText: '>4000', comparator: '>' },
    );
    const finding = findingOn(judge(record), 'ceiling:flue-co-air-free@high');
    expect(finding.verdict).toBe('stop');
    expect(finding.proof).toEqual({ proven: false, because: ['over-range'] });
    expect(finding.basis.inputs['coPpm@high#2']).toBe('>4000');
  });

  it('has CO/CO₂ 0.0040 where that rule is used, and where nobody knows', () => {
    const record = withValue(withValue(cleanRecord(), 'coPpm', 'low', 360), 'co2DryVolPct', 'low', 8.7);
    expect(findingOn(judge(record, 'GB'), 'ceiling:flue-co-to-co2@low').verdict).toBe('stop');
    expect(findingOn(judge(record, 'somewhere'), 'ceiling:flue-co-to-co2@low').verdict).toBe('stop');
    expect(findingsOn(judge(record, 'US-CO'), 'ceiling:flue-co-to-co2@low')).toEqual([]);
  });
});

describe('room CO', () => {
  it.each([
    [9, 'within', 'within'],
    [10, 'near-the-edge', 'within'],
    [35, 'near-the-edge', 'within'],
    [36, 'stop', 'within'],
    [99, 'stop', 'within'],
    [100, 'stop', 'stop'],
  ] as const)('%d ppm: %s, everybody out: %s', (ppm, ventilate, everybodyOut) => {
    const findings = judge(withValue(cleanRecord(), 'roomCoPpm', null, ppm));
    expect(findingOn(findings, 'ceiling:room-co').verdict).toBe(ventilate);
    const out = findingOn(findings, 'ceiling:room-co-everybody-out');
    expect(out.verdict).toBe(everybodyOut);
    expect(out.leaveFirst).toBe(everybodyOut === 'stop' ? true : undefined);
  });
});

describe('water', () => {
  it.each([
    ['US-CO', 49, 'near-the-edge'],
    ['US-CO', 50, 'outside'],
    ['DE', 50, 'near-the-edge'],
    ['DE', 51, 'outside'],
    ['Atlantis', 50, 'outside'],
  ] as const)('%s: %d °C at the tap is %s', (place, celsius, verdict) => {
    const findings = judge(withValue(cleanRecord(), 'mixedOutletC', null, celsius), place);
    const verdicts = findingsOn(findings, 'ceiling:tap-water').map((finding) => finding.verdict);
    expect(verdicts).toContain(verdict);
  });

  it('stops at a temperature that burns in seconds', () => {
    const findings = judge(withValue(cleanRecord(), 'mixedOutletC', null, 60));
    expect(findingOn(findings, 'ceiling:tap-water-scald').verdict).toBe('stop');
  });

  it.each([
    // 30 psi valve in North America: 27 psi is the most, near the edge from 24 psi.
    ['US', 30, 23, 'within'],
    ['US', 30, 25, 'near-the-edge'],
    ['US', 30, 27, 'near-the-edge'],
    ['US', 30, 27.05, 'outside'],
    ['US', 30, 29, 'stop'],
  ] as const)('%s, valve %d psi, hot %d psi: %s', (place, setting, hot, verdict) => {
    const record = withValue(
      withValue(cleanRecord(), 'reliefSettingBarG', null, setting * PSI),
      'systemPressureBarG',
      'hot',
      hot * PSI,
    );
    expect(findingOn(judge(record, place), 'ceiling:relief-headroom@hot').verdict).toBe(verdict);
  });

  it.each([
    [2.4, 'within'],
    [2.5, 'within'],
    [2.6, 'outside'],
    [2.9, 'stop'],
  ] as const)('Europe, 3 bar valve, hot %d bar: %s', (hot, verdict) => {
    expect(
      findingOn(judge(withValue(cleanRecord(), 'systemPressureBarG', 'hot', hot)), 'ceiling:relief-headroom@hot')
        .verdict,
    ).toBe(verdict);
  });

  it('asks for the setting when nobody wrote it down', () => {
    expect(
      findingOn(judge(withoutReading(cleanRecord(), 'reliefSettingBarG')), 'ceiling:relief-headroom@hot'),
    ).toMatchObject({
      verdict: 'cannot-judge',
      missing: ['the relief valve’s setting'],
    });
  });
});

describe('hot water that nothing mixes', () => {
  const hot = (celsius: number) =>
    reading({ quantity: 'hotOutletC', value: celsius, itemKey: 'hot-out', stepKey: 'leaving', minutes: 77 });
  const unmixed = withoutReading(cleanRecord(), 'mixedOutletC');
  const leftOut = {
    ...unmixed,
    answers: [
      ...unmixed.answers,
      { itemKey: 'mixed', stepKey: 'leaving', value: null, reason: 'no mixing valve', byId: 'staff-1', at: at(78) },
    ],
  };

  it('asks for the mixed water while it is still to be read', () => {
    expect(findingOn(judge(withReadings(unmixed, hot(62))), 'ceiling:tap-water')).toMatchObject({
      verdict: 'cannot-judge',
      blocks: ['leaving'],
    });
    expect(findingsOn(judge(withReadings(unmixed, hot(46))), 'ceiling:tap-water')).toEqual([]);
  });

  it('is the water at the tap where there is no mixing valve', () => {
    expect(findingOn(judge(withReadings(leftOut, hot(62))), 'ceiling:tap-water-scald').verdict).toBe('stop');
    expect(findingOn(judge(withReadings(leftOut, hot(52))), 'ceiling:tap-water').verdict).toBe('outside');
  });

  it('does not matter behind a mixing valve', () => {
    const findings = judge(withReadings(cleanRecord(), hot(62)));
    expect(
      findings.filter(({ subject, verdict }) => subject.startsWith('ceiling:tap') && verdict !== 'within'),
    ).toEqual([]);
  });
});

describe('vent and intake', () => {
  it('stops above the vent material’s limit', () => {
    expect(
      findingOn(judge(withValue(cleanRecord(), 'flueGasC', 'high', 89.5)), 'ceiling:vent-material@high').verdict,
    ).toBe('stop');
  });

  it('can’t judge hot flue gas in a vent of unknown material', () => {
    const silent = judgementSheet({ appliance: { ...sheet.appliance, ventMaxC: null } });
    const findings = judgeRun({ record: withValue(cleanRecord(), 'flueGasC', 'high', 80), sheet: silent });
    expect(findingOn(findings, 'ceiling:vent-material@high').verdict).toBe('cannot-judge');
  });
});

describe('a sheet against a ceiling', () => {
  const record = withValue(cleanRecord(), 'coPpm', 'high', 500);

  it.each([
    ['silent', []],
    ['looser', [{ quantity: 'coAirFreePpm', max: 2000, basis: { kind: 'maker', source: 'x' } }]],
  ])('%s: the stop stands', (_, limits) => {
    const findings = judgeRun({ record, sheet: judgementSheet({ limits }) });
    expect(findingOn(findings, 'ceiling:flue-co-air-free@high').verdict).toBe('stop');
    expect(findings.filter((one) => one.subject === 'limit:coAirFreePpm@high' && one.verdict === 'within')).toEqual([]);
  });

  it('is applied as the ceiling where it is looser, and as itself where it is tighter', () => {
    const looser = judgementSheet({
      limits: [{ quantity: 'roomCoPpm', max: 80, basis: { kind: 'maker', source: 'x' } }],
    });
    expect(findingOn(judgeRun({ record, sheet: looser }), 'limit:roomCoPpm').basis).toMatchObject({
      from: 'ceiling',
      limit: { max: 35 },
    });
    const tighter = judgementSheet({
      limits: [{ quantity: 'roomCoPpm', max: 5, basis: { kind: 'maker', source: 'x' } }],
    });
    expect(findingOn(judgeRun({ record, sheet: tighter }), 'limit:roomCoPpm').basis).toMatchObject({
      from: 'sheet',
      limit: { max: 5 },
    });
  });
});

describe('ceilings as data', () => {
  it('each names a source, a bound and, for a stop, how to make safe', () => {
    expect(SAFETY_CEILINGS.length).toBeGreaterThanOrEqual(8);
    for (const ceiling of SAFETY_CEILINGS) {
      expect(ceiling.source.source.length).toBeGreaterThan(10);
      expect(ceiling.min ?? ceiling.max).toBeDefined();
      expect(ceiling.makeSafe.length).toBeGreaterThan(0);
      if (ceiling.severity === 'stop') expect(ceiling.blocks).toContain('leaving');
    }
  });

  it('knows places by their country code and nothing else', () => {
    expect(
      ['US-CO', 'ca', 'GB', 'de-BY', 'IE', 'Bavaria', '', 'north-america', 'Europe', 'toString'].map(regionOf),
    ).toEqual([
      'north-america',
      'north-america',
      'britain-and-ireland',
      'europe',
      'britain-and-ireland',
      'unknown',
      'unknown',
      'north-america',
      'europe',
      'unknown',
    ]);
  });
});
