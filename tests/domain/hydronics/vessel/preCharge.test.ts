import { describe, expect, it } from 'vitest';
import type { PressurePractice } from '../../../../domain/hydronics/pressure/pressureCustoms.ts';
import { preChargeToSet } from '../../../../domain/hydronics/vessel/preCharge.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('preChargeToSet', () => {
  it('Europe: 0.2 bar over the static height, 0.2 bar under the fill', () => {
    const range = unwrap(preChargeToSet({ staticPressureBar: 0.7, coldFillBarG: 1.2, practice: 'europe' }));
    expect(range.leastBarG).toBeCloseTo(0.9, 12);
    expect(range.mostBarG).toBeCloseTo(1, 12);
  });

  it('North America: the cold fill pressure itself', () => {
    expect(unwrap(preChargeToSet({ staticPressureBar: 0.5, coldFillBarG: 0.83, practice: 'north-america' }))).toEqual({
      leastBarG: 0.83,
      mostBarG: 0.83,
    });
  });

  it('leaves no room when the fill is too low for the height', () => {
    const range = unwrap(preChargeToSet({ staticPressureBar: 0.9, coldFillBarG: 1, practice: 'europe' }));
    expect(range.leastBarG).toBeGreaterThan(range.mostBarG);
  });
});

describeRanges(
  'preChargeToSet',
  preChargeToSet,
  { staticPressureBar: 0.7, coldFillBarG: 1.2, practice: 'europe' as PressurePractice },
  [
    ['staticPressureBar', 0, 20],
    ['coldFillBarG', 0, 20],
  ],
);
