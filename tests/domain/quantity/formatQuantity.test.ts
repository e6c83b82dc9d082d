import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatNumber, formatQuantity, shownDecimals } from '../../../domain/quantity/formatQuantity.ts';
import { parseTyped } from '../../../domain/quantity/parseTyped.ts';
import { preferredUnit } from '../../../domain/quantity/preferredUnit.ts';
import { QUANTITY_KEYS, quantitySpec } from '../../../domain/quantity/quantities.ts';

describe('formatQuantity', () => {
  it.each([
    ['supplyC', 60, 'metric', '60.0', '°C'],
    ['supplyC', 60, 'us', '140.0', '°F'],
    ['deltaTK', 10, 'us', '18.0', '°F'],
    ['systemPressureBarG', 0.8274, 'us', '12.0', 'psi'],
    ['inletPressureMbarG', 17.436, 'us', '7.0', 'in w.c.'],
    ['ratedInputKw', 32.2378, 'us', '110\u202f000', 'Btu/h'],
    ['altitudeM', 2743.2, 'us', '9000', 'ft'],
    ['typedGasRateM3PerH', 2.9137, 'us', '103', 'ft³/h'],
    ['outdoorC', -5.04, 'metric', '−5.0', '°C'],
    ['outdoorC', -0.01, 'metric', '0.0', '°C'],
  ] as const)('%s %d %s', (key, value, system, text, unit) => {
    expect(formatQuantity(key, value, system)).toEqual({ text, unit });
  });

  it('writes the decimal mark of the reader', () => {
    expect(formatQuantity('systemPressureBarG', 1.5, 'metric', 'de').text).toBe('1,50');
    expect(formatNumber(12345.6, 1, 'de')).toBe('12\u202f345,6');
    expect(formatNumber(12345.6, 1, 'en-US')).toBe('12\u202f345.6');
  });

  it('treats a number that is none as a bug', () => {
    expect(() => formatQuantity('supplyC', Number.NaN, 'metric')).toThrow();
  });

  it('is read back to the same number within half a last place, in every unit system and country', async () => {
    await fc.assert(
      fc.property(
        fc.constantFrom(...QUANTITY_KEYS),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom('metric' as const, 'us' as const),
        fc.constantFrom('en', 'de', 'fr'),
        (key, share, system, locale) => {
          const [min, max] = quantitySpec(key).possible;
          const valueOwn = min + (max - min) * share;
          const shown = formatQuantity(key, valueOwn, system, locale);
          const unit = preferredUnit(key, system);
          const read = parseTyped(key, `${shown.text} ${shown.unit}`, unit.symbol);
          const halfLastPlace = 0.5 * 10 ** -shownDecimals(key, system);
          if (!read.ok) {
            // Only rounding over the edge of the possible range may be refused.
            expect(read.error.code).toBe('beyond-possible');
            const typedMin = Math.min(unit.fromOwn(min), unit.fromOwn(max));
            const typedMax = Math.max(unit.fromOwn(min), unit.fromOwn(max));
            const typed = unit.fromOwn(valueOwn);
            expect(Math.min(typed - typedMin, typedMax - typed)).toBeLessThanOrEqual(halfLastPlace * 1.000001);
            return;
          }
          expect(Math.abs(read.value.valueTyped - unit.fromOwn(valueOwn))).toBeLessThanOrEqual(
            halfLastPlace * 1.000001,
          );
          expect(read.value.unit).toBe(unit.symbol);
        },
      ),
      { numRuns: 3000 },
    );
  });
});
