/**
 * The four drifts of a yearly service: O₂ or CO₂ by more than 0.5 points, CO doubled, flue 10 °C warmer, dynamic inlet
 * pressure 10 % lower. Source: general practice of a yearly service as summed up for the trade; no single publication.
 */
import { describe, expect, it } from 'vitest';
import { DRIFT_LIMITS, movementOf } from '../../../domain/trend/movement.ts';
import type { TrendQuantity } from '../../../domain/trend/symptoms.ts';
import type { TrendValue } from '../../../domain/trend/trendValues.ts';

function value(trend: TrendQuantity, number: number, more: Partial<TrendValue> = {}): TrendValue {
  return { trend, point: 'high', value: number, plusMinus: 0, comparator: '=', readings: [], returnC: 50, ...more };
}
const moved = (trend: TrendQuantity, before: number, now: number) =>
  movementOf(value(trend, before), value(trend, now));

describe('movementOf', () => {
  it.each([
    ['co2', 9.2, 8.7, 'same'],
    ['co2', 9.2, 8.69, 'down'],
    ['o2', 4.5, 5.1, 'up'],
    ['co', 30, 59, 'same'],
    ['co', 30, 60, 'up'],
    ['co', 60, 30, 'down'],
    ['flue-over-return', 12, 22, 'same'],
    ['flue-over-return', 12, 22.5, 'up'],
    ['dynamic-inlet-pressure', 20, 18, 'same'],
    ['dynamic-inlet-pressure', 20, 17.9, 'down'],
  ] as const)('finds %s from %d to %d: %s', (trend, before, now, expected) => {
    expect(moved(trend, before, now)).toBe(expected);
  });

  it('does not call it doubled where next to nothing has doubled', () => {
    expect(moved('co', 3, 8)).toBe('same');
    expect(moved('co', 0, 9)).toBe('same');
    expect(moved('co', 0, 10)).toBe('up');
  });

  it('cannot tell what the two instruments could be off by themselves', () => {
    const before = value('co2', 9.2, { plusMinus: 0.5 });
    expect(movementOf(before, value('co2', 8.6, { plusMinus: 0.5 }))).toBe('unclear');
    expect(movementOf(before, value('co2', 8.4, { plusMinus: 0.5 }))).toBe('down');
  });

  it('counts an over-range display for at least what it shows, and only upwards', () => {
    expect(movementOf(value('co', 30), value('co', 4000, { comparator: '>' }))).toBe('up');
    expect(movementOf(value('co', 4000, { comparator: '>' }), value('co', 30))).toBe('unclear');
    expect(movementOf(value('co', 30), value('co', 40, { comparator: '>' }))).toBe('unclear');
  });

  it('says the same of a change in either direction', () => {
    for (const trend of Object.keys(DRIFT_LIMITS) as TrendQuantity[]) {
      const there = moved(trend, 10, 40);
      const back = moved(trend, 40, 10);
      expect([there, back]).toEqual(there === 'same' ? ['same', 'same'] : ['up', 'down']);
    }
  });
});
