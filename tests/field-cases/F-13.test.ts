/**
 * Field case F-13, "62 degrees in the snow": snow on the ground, 28 °F by every phone, and the boiler's display says
 * 62 °F: with water set by the outdoor temperature the building starves.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { celsiusToFahrenheit, fahrenheitToCelsius } from '../../domain/quantity/conversions.ts';
import { findingOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord, reading, withReadings } from '../support/recordBuilder.ts';

const read = (quantity: Parameters<typeof reading>[0]['quantity'], fahrenheit: number) =>
  reading({ quantity, value: fahrenheitToCelsius(fahrenheit), itemKey: quantity, stepKey: 'leaving', minutes: 79 });
const curve = [
  read('resetDesignOutdoorC', 0),
  read('resetDesignSupplyC', 180),
  read('resetMildOutdoorC', 60),
  read('resetMildSupplyC', 100),
];
const judge = (displayed: number, real: number) =>
  findingOn(
    judgeRun({
      record: withReadings(cleanRecord(), read('displayOutdoorC', displayed), read('outdoorC', real), ...curve),
      sheet: judgementSheet(),
    }),
    'computed:outdoor-sensor',
  );

describe('F-13: 62 degrees in the snow', () => {
  it('finds the sensor 34 °F off, against a limit of 5 °F', () => {
    const finding = judge(62, 28);
    expect((finding.basis.result?.value ?? 0) * 1.8).toBeCloseTo(34, 6);
    expect(finding).toMatchObject({ verdict: 'outside', basis: { from: 'practice' } });
    expect(finding.basis.source?.source).toMatch(/5 °F/);
    expect(finding.basis.inputs['lookAt']).toMatch(/sun/);
  });

  it('shows 143 °F needed and 100 °F asked for', () => {
    const { inputs } = judge(62, 28).basis;
    expect(Math.abs(celsiusToFahrenheit(Number(inputs['supplyNeededC'])) - 143)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(celsiusToFahrenheit(Number(inputs['supplyAskedForC'])) - 100)).toBeLessThanOrEqual(0.5);
  });

  it('takes four degrees', () => {
    expect(judge(32, 28).verdict).toBe('within');
  });
});
