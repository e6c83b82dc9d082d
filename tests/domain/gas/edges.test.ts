/** Where one answer turns into another, and the small terms that no published value can tell from nothing. */
import { describe, expect, it } from 'vitest';
import { deviationFromRating } from '../../../domain/gas/gasInput.ts';
import { highPressurePipeCapacityM3PerH } from '../../../domain/gas/pipeSizing.ts';
import { unwrap } from '../../../domain/result.ts';

describe('deviationFromRating', () => {
  it.each([9, 11])('should not tell a rating of %d kW from an input between 9 and 11 kW', (siteRatingKw) => {
    const measured = { basis: 'gross', inputKw: 10, lowestKw: 9, highestKw: 11, isLongEnough: true } as const;
    expect(unwrap(deviationFromRating({ measured, siteRatingKw })).isRatingInsideInterval).toBe(true);
  });
});

describe('high pressure pipes', () => {
  const run = { equivalentLengthM: 30, inletKpaAbs: 240, outletKpaAbs: 170, insideDiameterMm: 26.6 };

  it('should carry more with a larger Y, by its 0.206/0.381 power (International Fuel Gas Code 2018, App. A.4)', () => {
    const capacity = (y: number) => unwrap(highPressurePipeCapacityM3PerH({ ...run, gas: { cr: 1.2462, y } }));
    expect(capacity(0.991) / capacity(1)).toBeCloseTo(0.991 ** (0.206 / 0.381), 9);
  });

  it('should refuse an outlet that has hardly less pressure than the inlet', () => {
    const refused = highPressurePipeCapacityM3PerH({ ...run, outletKpaAbs: 240, gas: { cr: 0.6094, y: 0.9992 } });
    expect(refused).toMatchObject({ ok: false, error: { quantity: 'outletKpaAbs' } });
  });
});
