/**
 * Field case F-12, "test settings left behind": a new condensing boiler sent 180 °F to radiators on a 60 °F day:
 * settings were left as the works had them, and the heat loss was never entered.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { fahrenheitToCelsius } from '../../domain/quantity/conversions.ts';
import { findingOn, findingsOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { at, cleanRecord, withValue } from '../support/recordBuilder.ts';

const factoryC = fahrenheitToCelsius(180);
const sheet = judgementSheet({ factoryDefaults: [{ quantity: 'supplySetpointC', value: factoryC }] });
const left = withValue(cleanRecord(), 'supplySetpointC', null, factoryC);

describe('F-12: test settings left behind', () => {
  it('asks for a chosen value or a reason where a setting is as it left the works', () => {
    expect(findingOn(judgeRun({ record: left, sheet }), 'default:supplySetpointC')).toMatchObject({
      verdict: 'cannot-judge',
      blocks: ['leaving'],
      missing: [expect.stringMatching(/chosen value, or the reason/)],
    });
  });

  it('takes a chosen value, and the factory’s with a reason', () => {
    expect(findingsOn(judgeRun({ record: cleanRecord(), sheet }), 'default:supplySetpointC')).toEqual([]);
    const reasoned = {
      ...left,
      answers: [
        ...left.answers,
        {
          itemKey: 'setpoint',
          stepKey: 'leaving',
          value: null,
          reason: 'fin-tube needs it',
          byId: 'staff-1',
          at: at(80),
        },
      ],
    };
    expect(findingsOn(judgeRun({ record: reasoned, sheet }), 'default:supplySetpointC')).toEqual([]);
  });

  it('shows that 150 °F out and 140 °F back is above the dew point of about 130 °F', () => {
    const record = withValue(
      withValue(withValue(cleanRecord(), 'o2DryVolPct', 'high', 5), 'supplyC', 'high', fahrenheitToCelsius(150)),
      'returnC',
      'high',
      fahrenheitToCelsius(140),
    );
    const { basis } = findingOn(judgeRun({ record, sheet }), 'computed:dew-point@high');
    expect(Math.abs((basis.result?.value ?? 0) - 54)).toBeLessThanOrEqual(1);
    expect(basis.inputs['condenses']).toBe('no');
  });

  it('has LP condense below about 50 °C', () => {
    const lp = withValue(
      withValue({ ...cleanRecord(), fuel: 'propane' as const }, 'o2DryVolPct', 'high', 5),
      'co2DryVolPct',
      'high',
      10.4,
    );
    expect(
      Math.abs((findingOn(judgeRun({ record: lp, sheet }), 'computed:dew-point@high').basis.result?.value ?? 0) - 50),
    ).toBeLessThanOrEqual(1);
  });
});
