/**
 * Field case F-06, "two percent over on a cold day": a boiler of 210 000 Btu/h clocked at 17 s for one cubic foot
 * seems 1.9 % over; a second either way on the watch is 6 %. It cannot be told apart from its rating.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { unwrap } from '../../domain/result.ts';
import { findingOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord, withValue } from '../support/recordBuilder.ts';

const own = (...args: Parameters<typeof parseTyped>) => unwrap(parseTyped(...args)).valueOwn;
const KW_PER_BTU_H = 0.29307107e-3;

describe('F-06: two percent over on a cold day', () => {
  const timing = [
    ['meterDialM3', own('meterDialM3', '1', 'ft³')],
    ['meterTurns', 1],
    ['meterSeconds', 17],
  ] as const;
  const record = timing.reduce<RunRecord>((changed, [quantity, value]) => withValue(changed, quantity, 'high', value), {
    ...cleanRecord(),
    appliance: { ...cleanRecord().appliance, ratedInputKw: own('ratedInputKw', '210000 Btu/h', 'kW') },
    site: {
      ...cleanRecord().site,
      heatingValueMjPerM3: own('heatingValueMjPerM3', '1010', 'Btu/ft³'),
      heatingValueSource: 'the utility, October',
    },
  });
  const finding = findingOn(
    judgeRun({
      record,
      sheet: judgementSheet({ altitude: { method: 'no-derate', basis: { kind: 'maker', source: 'x' } } }),
    }),
    'computed:clocked-input',
  );

  it('is 213,900 Btu/h, 1.9 % over', () => {
    expect(Math.abs((finding.basis.result?.value ?? 0) / KW_PER_BTU_H - 213_900)).toBeLessThanOrEqual(100);
    // Printed from the rounded 213,900, which is 1.86 %; unrounded it is 1.85 %.
    expect(Math.abs(Number(finding.basis.inputs['deviationPct']) - 1.9)).toBeLessThanOrEqual(0.06);
  });

  it('lies between 202,000 and 227,300 Btu/h, so it can’t be told apart from the rating', () => {
    const rating = 210_000;
    expect(Math.abs((1 + Number(finding.basis.inputs['lowestPct']) / 100) * rating - 202_000)).toBeLessThanOrEqual(100);
    expect(Math.abs((1 + Number(finding.basis.inputs['highestPct']) / 100) * rating - 227_300)).toBeLessThanOrEqual(
      100,
    );
    expect(finding).toMatchObject({ verdict: 'cannot-tell-apart', blocks: [] });
  });

  it('asks for a longer timing and keeps the source of the heating value', () => {
    expect(finding.missing.join()).toMatch(/two turns/);
    expect(finding.basis.inputs['heatingValueSource']).toBe('the utility, October');
  });
});
