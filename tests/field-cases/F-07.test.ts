/**
 * Field case F-07, "digits swapped between two lines": two turns of a one-foot dial in 70 s are 102.8 ft³/h; carried
 * to the next line as 120.8, the input came out 17 % too large.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { unwrap } from '../../domain/result.ts';
import { findingOn, suggestionCodes } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord, reading, withReadings, withValue } from '../support/recordBuilder.ts';

const own = (...args: Parameters<typeof parseTyped>) => unwrap(parseTyped(...args)).valueOwn;
const M3_PER_FT3 = 0.0283168466;

describe('F-07: digits swapped between two lines', () => {
  const timing = [
    ['meterDialM3', own('meterDialM3', '1', 'ft³')],
    ['meterTurns', 2],
    ['meterSeconds', 70],
  ] as const;
  const raw = timing.reduce<RunRecord>((changed, [quantity, value]) => withValue(changed, quantity, 'high', value), {
    ...cleanRecord(),
    appliance: { ...cleanRecord().appliance, ratedInputKw: 31 },
    site: { ...cleanRecord().site, heatingValueMjPerM3: own('heatingValueMjPerM3', '1025', 'Btu/ft³') },
  });
  const withRate = (text: string) =>
    judgeRun({
      record: withReadings(raw, {
        ...reading({
          quantity: 'typedGasRateM3PerH',
          value: own('typedGasRateM3PerH', text, 'ft³/h'),
          itemKey: 'rate',
          stepKey: 'combustion',
          point: 'high',
          minutes: 55,
          typedUnit: 'ft³/h',
        }),
        typedText: text,
      }),
      sheet: judgementSheet(),
    });

  it('computes 102.9 ft³/h and 105,400 Btu/h from the raw timing', () => {
    const { result } = findingOn(withRate('102.9'), 'computed:clocked-input').basis;
    expect(Math.abs((result?.value ?? 0) / 0.29307107e-3 - 105_400)).toBeLessThanOrEqual(50);
  });

  it('asks about 120.8: digits swapped, 102.8', () => {
    const findings = withRate('120.8');
    const finding = findingOn(findings, 'mistake:digits-swapped@high');
    expect(finding.missing).toEqual(['digits swapped?']);
    expect((finding.suggestions[0]?.changes[0]?.toOwn ?? 0) / M3_PER_FT3).toBeCloseTo(102.8, 3);
    expect(Number(finding.basis.inputs['computedM3PerH']) / M3_PER_FT3).toBeCloseTo(102.86, 1);
  });

  it('takes 102.8 and 102.9', () => {
    expect(suggestionCodes(withRate('102.8'))).toEqual([]);
    expect(suggestionCodes(withRate('102.9'))).toEqual([]);
  });
});
