import { describe, expect, it } from 'vitest';
import { CONDENSING_RETURN_RULE_C, condensingCheck } from '../../../../domain/hydronics/condensing/condensingCheck.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('condensingCheck', () => {
  it.each([
    [56, 55, -1, false, false],
    [55, 55, 0, false, false],
    [52, 55, 3, true, false],
    [50, 55, 5, true, true],
    [50.1, 55, 4.9, true, false],
    [45, 44, -1, false, false],
  ])('return %s °C, dew point %s °C: margin %s K', (returnC, dewPointC, marginK, isCondensing, isGainUseful) => {
    const check = unwrap(condensingCheck({ returnC, dewPointC }));
    expect(check.marginK).toBeCloseTo(marginK, 12);
    expect([check.isCondensing, check.isGainUseful]).toEqual([isCondensing, isGainUseful]);
  });

  it('knows the published 130 °F', () => {
    expect(CONDENSING_RETURN_RULE_C).toBe(54);
  });
});

describeRanges('condensingCheck', condensingCheck, { returnC: 45, dewPointC: 55 }, [
  ['returnC', 0, 120],
  ['dewPointC', 0, 100],
]);
