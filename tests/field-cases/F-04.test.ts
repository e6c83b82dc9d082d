/**
 * Field case F-04, "the tag said the wrong fuel": boilers for natural gas carried a hanging tag for propane, all
 * within one range of serials. On propane without the kit they make CO.
 */
import { describe, expect, it } from 'vitest';
import { co2MaxOfPair } from '../../domain/combustion/o2Co2.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { openNotices } from '../../domain/recalls/openNotices.ts';
import { unwrap } from '../../domain/result.ts';
import { findingOn, suggestionCodes } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord, withValue } from '../support/recordBuilder.ts';

const RECALL = {
  recallId: 'r1',
  title: 'A hanging tag may say the wrong fuel',
  number: null,
  source: 'the maker',
  whatToDo: 'Do not fire it on LP before tag, kit and orifice have been looked at.',
  mayFire: false,
  maker: 'Invented maker',
  models: ['X'],
  serialRanges: [{ from: 'AB5071000', to: 'AB5327000' }],
  altitudeMinM: null,
  altitudeMaxM: null,
};

describe('F-04: the tag said the wrong fuel', () => {
  it.each([
    ['AB5100233', true],
    ['AB5071000', true],
    ['AB5327000', true],
    ['ab 5327-000', true],
    ['AB5070999', false],
    ['AB5327001', false],
    ['AC5100233', false],
  ])('recall range, %s: %s', (serial, isInside) => {
    const unit = { maker: 'Invented maker', model: 'X', serial, altitudeM: 10 };
    expect(openNotices([RECALL], unit, new Map())).toHaveLength(isInside ? 1 : 0);
  });

  it('a unit whose serial was never read is not left out of a recall', () => {
    const unit = { maker: 'Invented maker', model: 'X', serial: '', altitudeM: 10 };
    expect(openNotices([RECALL], unit, new Map())).toMatchObject([{ doubts: ['serial-missing'] }]);
  });

  it('the pair tells what the analyser was set to: CO₂max 13.7, an LP setting', () => {
    expect(Math.abs(unwrap(co2MaxOfPair({ o2DryVolPct: 5, co2DryVolPct: 10.4 })) - 13.7)).toBeLessThanOrEqual(0.1);
  });

  it('on natural gas it is read again with the right setting, never converted, and never called proof of the fuel', () => {
    const record = withValue(withValue(cleanRecord(), 'o2DryVolPct', 'high', 5), 'co2DryVolPct', 'high', 10.4);
    const findings = judgeRun({ record, sheet: judgementSheet() });
    expect(suggestionCodes(findings)).toContain('analyser-on-other-fuel');
    const finding = findingOn(findings, 'mistake:analyser-on-other-fuel@high');
    expect(finding.basis.inputs['fuelOfThePair']).toMatch(/propane/);
    expect(finding.suggestions).toMatchObject([{ changes: [], needsNewReading: true }]);
  });

  it('on an LP job the pair fits, and that says nothing about what burns', () => {
    const lp = { ...cleanRecord(), fuel: 'propane' as const };
    const record = ['high', 'low'].reduce<RunRecord>(
      (changed, point) => withValue(withValue(changed, 'o2DryVolPct', point, 5), 'co2DryVolPct', point, 10.4),
      lp,
    );
    const findings = judgeRun({ record, sheet: judgementSheet({ limits: [], relations: [] }) });
    expect(suggestionCodes(findings)).not.toContain('analyser-on-other-fuel');
  });

  it('names the fuel of the analyser’s setting beside the pair, whatever burns', () => {
    for (const fuel of ['natural-gas', 'propane'] as const) {
      const record = withValue(
        withValue({ ...cleanRecord(), fuel }, 'o2DryVolPct', 'high', 5),
        'co2DryVolPct',
        'high',
        10.4,
      );
      const { basis, verdict } = findingOn(judgeRun({ record, sheet: judgementSheet() }), 'computed:co2-max@high');
      expect(verdict).toBe('no-limit-on-sheet');
      expect(Math.abs((basis.result?.value ?? 0) - 13.7)).toBeLessThanOrEqual(0.1);
      expect(basis.inputs['analyserSetTo']).toMatch(/propane/);
    }
  });
});
