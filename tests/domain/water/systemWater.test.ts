import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../domain/result.ts';
import {
  BRITISH_DOMESTIC_TREATMENT,
  conductivityClass,
  MAKERS_CHLORIDE_MG_PER_L,
  systemWaterPh,
} from '../../../domain/water/systemWater.ts';
import { describeRanges } from '../hydronics/describeRanges.ts';

describe('systemWaterPh', () => {
  // VDI 2035 Part 1:2021 as quoted in a third-party manual.
  it.each([
    [8.19, false, 'below', false],
    [8.2, false, 'within', false],
    [10, false, 'within', false],
    [10.01, false, 'above', false],
    [8.19, true, 'below', true],
    [8.2, true, 'within', false],
    [8.5, true, 'within', false],
    [8.51, true, 'within', true],
    [9, true, 'within', true],
    [9.01, true, 'above', true],
  ])('pH %s, aluminium %s: %s', (ph, hasAluminium, position, shouldAskMaker) => {
    expect(unwrap(systemWaterPh({ ph, hasAluminium, weeksSinceFill: 8 }))).toEqual({
      recommended: [8.2, hasAluminium ? 9 : 10],
      position,
      shouldAskMaker,
      isSettled: true,
    });
  });

  it('is settled after six weeks, and unknown when nobody knows the fill date', () => {
    const isSettled = (weeksSinceFill: number | null) =>
      unwrap(systemWaterPh({ ph: 8.5, hasAluminium: false, weeksSinceFill })).isSettled;
    expect([isSettled(5.9), isSettled(6), isSettled(null)]).toEqual([false, true, null]);
  });
});

describe('conductivityClass', () => {
  it.each([
    [0, 'low-salt'],
    [99.9, 'low-salt'],
    [100, 'saline'],
    [1500, 'saline'],
    [1500.1, 'above-recommendation'],
  ])('%s µS/cm: %s', (conductivityUsPerCm, kind) => {
    expect(unwrap(conductivityClass({ conductivityUsPerCm }))).toBe(kind);
  });
});

describe('other figures', () => {
  it('are as printed', () => {
    expect(MAKERS_CHLORIDE_MG_PER_L).toEqual([100, 250]);
    expect(BRITISH_DOMESTIC_TREATMENT).toEqual({
      inhibitorCheckMonths: 12,
      inhibitorRenewOrLabTestMonths: 60,
      scaleReducerAboveMgPerLCaCo3: 200,
    });
  });
});

describeRanges('systemWaterPh', systemWaterPh, { ph: 8.5, hasAluminium: true, weeksSinceFill: 8 as number | null }, [
  ['ph', 0, 14],
  ['weeksSinceFill', 0, 10_000],
]);
describeRanges('conductivityClass', conductivityClass, { conductivityUsPerCm: 50 }, [
  ['conductivityUsPerCm', 0, 100_000],
]);
