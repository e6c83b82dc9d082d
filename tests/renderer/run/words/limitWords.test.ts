import { describe, expect, it } from 'vitest';
import { entryUnits } from '../../../../domain/quantity/entryUnits.ts';
import type { QuantityKey } from '../../../../domain/quantity/quantities.ts';
import { limitWords, stopWords } from '../../../../renderer/run/words/limitWords.ts';

function inUnit(quantity: QuantityKey, symbol: string) {
  const unit = entryUnits(quantity).find((one) => one.symbol === symbol);
  if (unit === undefined) throw new Error(`no unit ${symbol}`);
  return unit;
}

describe('limitWords', () => {
  it.each([
    ['co2DryVolPct', '%', { min: 8.5, max: 9.7 }, '8.5 to 9.7 %'],
    ['coPpm', 'ppm', { max: 200 }, 'at most 200 ppm'],
    ['freshAirO2VolPct', '%', { min: 20.6 }, 'at least 20.6 %'],
    ['cleanStarts', '', { min: 5 }, 'at least 5'],
    ['systemPressureBarG', 'bar', { min: 0.25, max: null }, 'at least 0.25 bar'],
    ['systemPressureBarG', 'psi', { min: 0.83, max: 1.72 }, '12.1 to 24.9 psi'],
    ['supplySetpointC', '°F', { min: 30, max: 45 }, '86 to 113 °F'],
    // 6.8 in w.c. is 16.94 mbar: who reads it must not see it named as a bound and judged outside.
    ['inletPressureMbarG', 'in w.c.', { min: 17, max: 25 }, '6.9 to 10 in w.c.'],
    ['systemPressureBarG', 'psi', { min: 0.8, max: 1.5 }, '11.7 to 21.7 psi'],
    // 4 in w.c. as the sheet stores it: 9.96356 mbar.
    ['inletPressureMbarG', 'in w.c.', { min: 9.96356, max: 34.87246 }, '4 to 14 in w.c.'],
    ['inletPressureMbarG', 'mbar', { min: 9.96356, max: 34.87246 }, '9.97 to 34.87 mbar'],
  ] as const)('%s in %s', (quantity, symbol, bounds, words) => {
    expect(limitWords(quantity, bounds, inUnit(quantity, symbol))).toBe(words);
  });
});

describe('stopWords', () => {
  it.each([
    [{ max: 120 }, 'above 120 ppm'],
    [{ min: 5 }, 'below 5 ppm'],
    [{ min: 5, max: 120 }, 'outside 5 to 120 ppm'],
  ])('%j', (bounds, words) => {
    expect(stopWords('coPpm', bounds, inUnit('coPpm', 'ppm'))).toBe(words);
  });
});
