import { describe, expect, it } from 'vitest';
import { judgeReading } from '../../../domain/judgement/judgeReading.ts';
import { isAbout, judgeRun } from '../../../domain/judgement/judgeRun.ts';
import { findingOn, findingsOn, reasonsOf } from '../../support/findings.ts';
import { judgementSheet } from '../../support/judgementSheet.ts';
import {
  cleanRecord,
  reading,
  readingIdOf,
  withoutReading,
  withReading,
  withValue,
} from '../../support/recordBuilder.ts';

const sheet = judgementSheet();
const judge = (record = cleanRecord()) => judgeRun({ record, sheet });

describe('limits of the sheet', () => {
  it('finds the clean run inside every limit and proven', () => {
    const findings = judge();
    expect(findings.filter(({ verdict }) => ['outside', 'stop', 'cannot-judge'].includes(verdict))).toEqual([]);
    expect(findings.filter(({ proof }) => !proof.proven)).toEqual([]);
  });

  it('names the sheet, its revision and its source', () => {
    const finding = findingOn(judge(), 'limit:co2DryVolPct@high');
    expect(finding).toMatchObject({
      verdict: 'within',
      blocks: ['leaving'],
      basis: {
        from: 'sheet',
        sheet: { sheetId: 'test-sheet', revision: '2026-01' },
        limit: { min: 8.4, max: 9.8, severity: 'outside' },
      },
    });
  });

  it('applies the limit of the fuel and the point', () => {
    const propane = judge({ ...cleanRecord(), fuel: 'propane' });
    expect(findingOn(propane, 'limit:co2DryVolPct@high').verdict).toBe('outside');
    expect(findingOn(propane, 'limit:co2DryVolPct@low').verdict).toBe('no-limit-on-sheet');
    expect(
      findingOn(judge(withValue(cleanRecord(), 'co2DryVolPct', 'low', 9.7)), 'limit:co2DryVolPct@low').verdict,
    ).toBe('outside');
  });

  it('says "no limit on the sheet" and takes no band of the trade instead', () => {
    const finding = findingOn(judge(), 'limit:systemPressureBarG@hot');
    expect(finding).toMatchObject({ verdict: 'no-limit-on-sheet', basis: { limit: null, from: 'none' }, blocks: [] });
  });

  it('judges CO air-free although nobody types it', () => {
    const finding = findingOn(judge(withValue(cleanRecord(), 'coPpm', 'low', 150)), 'limit:coAirFreePpm@low');
    // 150 × 20.9 / (20.9 − 5.5)
    expect(finding.basis.result?.value).toBeCloseTo(203.6, 1);
    expect(finding.verdict).toBe('cannot-tell-apart');
    expect(findingOn(judge(withValue(cleanRecord(), 'coPpm', 'low', 190)), 'limit:coAirFreePpm@low').verdict).toBe(
      'outside',
    );
  });

  it('can not tell a reading from the limit inside the class of its instrument', () => {
    const record = withValue(cleanRecord(), 'inletPressureMbarG', 'dynamic', 17.05);
    const finding = findingOn(judge(record), 'limit:inletPressureMbarG@dynamic');
    expect(finding).toMatchObject({ verdict: 'cannot-tell-apart', blocks: [] });
    const below = withValue(cleanRecord(), 'inletPressureMbarG', 'dynamic', 16.98);
    expect(findingOn(judge(below), 'limit:inletPressureMbarG@dynamic')).toMatchObject({
      verdict: 'cannot-tell-apart',
      blocks: ['leaving'],
    });
  });

  it('judges relations between points, and says what is missing when only one was read', () => {
    const far = withValue(cleanRecord(), 'inletPressureMbarG', 'dynamic', 18);
    expect(findingOn(judge(far), 'relation:inletPressureMbarG@static-dynamic')).toMatchObject({
      verdict: 'outside',
      basis: { result: { value: expect.closeTo(3.2, 6) } },
    });
    const half = withoutReading(cleanRecord(), 'inletPressureMbarG', 'dynamic');
    expect(findingOn(judge(half), 'relation:inletPressureMbarG@static-dynamic')).toMatchObject({
      verdict: 'cannot-judge',
      missing: ['Gas inlet pressure (dynamic)'],
    });
  });

  it('judges no relation where the procedure asks for one of its readings alone, as a service may', () => {
    const half = withoutReading(cleanRecord(), 'inletPressureMbarG', 'static');
    const asksStatic = (item: (typeof sheet.startup)[number]['items'][number]) =>
      item.kind === 'read' && item.quantity === 'inletPressureMbarG' && item.point === 'static';
    const short = {
      ...sheet,
      startup: sheet.startup.map((step) => ({ ...step, items: step.items.filter((item) => !asksStatic(item)) })),
    };
    const about = 'relation:inletPressureMbarG@static-dynamic';
    expect(findingsOn(judgeRun({ record: half, sheet }), about)).toMatchObject([{ verdict: 'cannot-judge' }]);
    expect(findingsOn(judgeRun({ record: half, sheet: short }), about)).toEqual([]);
  });

  it('never takes missing for zero', () => {
    const record = withReading(
      cleanRecord(),
      { quantity: 'coPpm', point: 'high' },
      { valueOwn: null, typedText: '', notMeasuredReason: 'cell failed' },
    );
    const findings = judge(record);
    expect(findingsOn(findings, 'limit:coAirFreePpm@high')).toEqual([]);
    expect(findingsOn(findings, 'ceiling:flue-co-air-free@high')).toEqual([]);
  });

  it('judges one reading as it is typed by the same rules, with all that is computed from it', () => {
    const live = reading({
      quantity: 'coPpm',
      value: 420,
      itemKey: 'combustion-high',
      stepKey: 'combustion',
      point: 'high',
      sample: 2,
      minutes: 51.5,
      instrumentId: 'analyser-1',
    });
    const findings = judgeReading({ record: cleanRecord(), sheet, reading: live });
    expect(findingOn(findings, 'ceiling:flue-co-air-free@high').verdict).toBe('stop');
    expect(findingOn(findings, 'limit:coAirFreePpm@high').verdict).toBe('outside');
    expect(findings.every((finding) => isAbout(finding, live.readingId))).toBe(true);
    const record = cleanRecord({
      readings: cleanRecord().readings.map((one) => (one.readingId === readingIdOf('coPpm', 'high', 2) ? live : one)),
    });
    const whole = judgeRun({ record, sheet });
    expect(whole).toEqual(expect.arrayContaining([...findings]));
  });

  it('does not judge what was replaced', () => {
    const record = withReading(
      withValue(cleanRecord(), 'mixedOutletC', null, 70),
      { quantity: 'mixedOutletC' },
      { supersededById: 'other' },
    );
    expect(findingsOn(judge(record), 'ceiling:tap-water')).toEqual([]);
  });

  it('keeps a proof beside every verdict', () => {
    const record = withReading(cleanRecord(), { quantity: 'coPpm', point: 'high' }, { instrumentId: null });
    expect(reasonsOf(findingOn(judge(record), 'limit:coAirFreePpm@high'))).toEqual(['instrument-unknown']);
  });
});
