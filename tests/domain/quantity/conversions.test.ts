import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BTU_PER_MMBTU,
  barToKpa,
  barToPsi,
  btuPerFt3ToMjPerM3,
  btuPerHToKw,
  btuPerLbToMjPerKg,
  celsiusToFahrenheit,
  celsiusToKelvin,
  cubicFeetToCubicMetres,
  cubicMetresToCubicFeet,
  fahrenheitDifferenceToKelvinDifference,
  fahrenheitToCelsius,
  feetToMetres,
  ftWcToKpa,
  ftWcToPsi,
  imperialGallonsToLitres,
  inchesToMm,
  inHgToKpa,
  inWcToKpa,
  inWcToMbar,
  KJ_PER_BTU,
  KWH_PER_MMBTU,
  kelvinDifferenceToFahrenheitDifference,
  kelvinToCelsius,
  kgToLb,
  kpaToBar,
  kpaToFtWc,
  kpaToInHg,
  kpaToInWc,
  kpaToPsi,
  kwToBtuPerH,
  kwToMbh,
  lbToKg,
  litresToUsGallons,
  lPerMinToUsGpm,
  mbarToInWc,
  mbhToKw,
  metresToFeet,
  mjPerKgToBtuPerLb,
  mjPerM3ToBtuPerFt3,
  mmToInches,
  PA_PER_FT_WC,
  psiToBar,
  psiToFtWc,
  psiToInWc,
  psiToKpa,
  STANDARD_ATMOSPHERE_KPA,
  usGallonsToLitres,
  usGpmToLPerMin,
} from '../../../domain/quantity/conversions.ts';

const pairs = [
  ['celsiusToFahrenheit', celsiusToFahrenheit, fahrenheitToCelsius],
  ['celsiusToKelvin', celsiusToKelvin, kelvinToCelsius],
  [
    'kelvinDifferenceToFahrenheitDifference',
    kelvinDifferenceToFahrenheitDifference,
    fahrenheitDifferenceToKelvinDifference,
  ],
  ['barToPsi', barToPsi, psiToBar],
  ['psiToKpa', psiToKpa, kpaToPsi],
  ['barToKpa', barToKpa, kpaToBar],
  ['mbarToInWc', mbarToInWc, inWcToMbar],
  ['inWcToKpa', inWcToKpa, kpaToInWc],
  ['psiToFtWc', psiToFtWc, ftWcToPsi],
  ['ftWcToKpa', ftWcToKpa, kpaToFtWc],
  ['inHgToKpa', inHgToKpa, kpaToInHg],
  ['kwToBtuPerH', kwToBtuPerH, btuPerHToKw],
  ['kwToMbh', kwToMbh, mbhToKw],
  ['mjPerM3ToBtuPerFt3', mjPerM3ToBtuPerFt3, btuPerFt3ToMjPerM3],
  ['mjPerKgToBtuPerLb', mjPerKgToBtuPerLb, btuPerLbToMjPerKg],
  ['metresToFeet', metresToFeet, feetToMetres],
  ['mmToInches', mmToInches, inchesToMm],
  ['litresToUsGallons', litresToUsGallons, usGallonsToLitres],
  ['cubicFeetToCubicMetres', cubicFeetToCubicMetres, cubicMetresToCubicFeet],
  ['lPerMinToUsGpm', lPerMinToUsGpm, usGpmToLPerMin],
  ['kgToLb', kgToLb, lbToKg],
] as const;

describe('unit conversions', () => {
  it.each(pairs)('%s and its inverse undo each other', (_name, there, back) => {
    fc.assert(
      fc.property(fc.double({ min: -1000, max: 100_000, noNaN: true }), (value) => {
        const returned = back(there(value));
        expect(Math.abs(returned - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
      }),
    );
  });

  it.each([
    ['fahrenheitToCelsius', fahrenheitToCelsius, 212, 100],
    ['celsiusToKelvin', celsiusToKelvin, 0, 273.15],
    ['psiToBar', psiToBar, 30, 2.068427],
    ['kpaToBar', kpaToBar, 250, 2.5],
    ['inWcToKpa', inWcToKpa, 1, 0.24908891],
    ['inHgToKpa', inHgToKpa, 29.92126, 101.325],
    ['psiToInWc', psiToInWc, 1, 27.6799],
    ['mjPerKgToBtuPerLb', mjPerKgToBtuPerLb, 1, 429.9226],
    ['metresToFeet', metresToFeet, 1524, 5000],
    ['inchesToMm', inchesToMm, 0.622, 15.7988],
    ['litresToUsGallons', litresToUsGallons, 100, 26.4172],
    ['imperialGallonsToLitres', imperialGallonsToLitres, 1, 4.54609],
    ['cubicMetresToCubicFeet', cubicMetresToCubicFeet, 1, 35.31467],
    ['usGpmToLPerMin', usGpmToLPerMin, 1, 3.785412],
    ['lbToKg', lbToKg, 1, 0.45359237],
  ] as const)('%s agrees with the handbook figure', (_name, convert, value, expected) => {
    expect(Math.abs(convert(value) / expected - 1)).toBeLessThan(5e-6);
  });

  it('keeps 32 °F out of differences', () => {
    expect(kelvinDifferenceToFahrenheitDifference(0)).toBe(0);
    expect(celsiusToFahrenheit(0)).toBe(32);
  });

  it('gives the energy factors the same joule', () => {
    expect(KWH_PER_MMBTU).toBeCloseTo(293.0711, 4);
    expect(BTU_PER_MMBTU).toBe(1e6);
    expect(KJ_PER_BTU).toBeCloseTo(1.05505585262, 12);
    expect(STANDARD_ATMOSPHERE_KPA).toBe(101.325);
    expect(PA_PER_FT_WC).toBeCloseTo(2989.067, 3);
  });
});
