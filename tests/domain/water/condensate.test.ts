import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../domain/result.ts';
import {
  meetsSewerFloor,
  NEUTRALISED_PH,
  neutraliserByGermanGuidance,
  REAL_CONDENSATE_SHARE,
  USUAL_CONDENSATE_PH,
} from '../../../domain/water/condensate.ts';
import { describeRanges } from '../hydronics/describeRanges.ts';

const boiler = {
  outputKw: 200,
  dischargesTo: 'public-sewer' as 'public-sewer' | 'septic-plant',
  dilutionTimes: 25,
  hasAcidProofPipes: true,
};

describe('meetsSewerFloor', () => {
  // 40 CFR 403.5(b): nothing below pH 5.0; a local rule may only tighten it.
  it.each([
    [4.99, undefined, false],
    [5, undefined, true],
    [5.5, 6, false],
    [6, 6, true],
    [4.5, 4, false],
  ])('pH %s, local floor %s: %s', (outletPh, localFloorPh, value) => {
    const discharge = localFloorPh === undefined ? { outletPh } : { outletPh, localFloorPh };
    expect(unwrap(meetsSewerFloor(discharge))).toBe(value);
  });
});

describe('neutraliserByGermanGuidance', () => {
  it('is normally not needed for a small boiler into a diluting sewer', () => {
    expect(unwrap(neutraliserByGermanGuidance(boiler))).toBe('normally-not-needed');
  });

  it.each([
    ['above 200 kW', { outputKw: 200.1 }],
    ['into a septic plant', { dischargesTo: 'septic-plant' as const }],
    ['with too little dilution', { dilutionTimes: 24.9 }],
    ['with pipes acid eats', { hasAcidProofPipes: false }],
  ])('is needed %s', (_, change) => {
    expect(unwrap(neutraliserByGermanGuidance({ ...boiler, ...change }))).toBe('needed');
  });
});

describe('condensate figures', () => {
  it('are as printed', () => {
    expect([USUAL_CONDENSATE_PH, NEUTRALISED_PH, REAL_CONDENSATE_SHARE]).toEqual([
      [3.5, 5.5],
      [6.5, 10],
      [0.4, 0.8],
    ]);
  });
});

describeRanges('meetsSewerFloor', meetsSewerFloor, { outletPh: 6, localFloorPh: 6 }, [
  ['outletPh', 0, 14],
  ['localFloorPh', 0, 14],
]);
describeRanges('neutraliserByGermanGuidance', neutraliserByGermanGuidance, boiler, [
  ['outputKw', 0, 100_000],
  ['dilutionTimes', 0, 1_000_000],
]);
