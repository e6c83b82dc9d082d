/** Timed meters and altitude rules as they came up in the field; arithmetic by hand beside each row. */
import { describe, expect, it } from 'vitest';
import { type AltitudeRule, siteRatingKw, US_COMMON_ALTITUDE_RULE } from '../../../domain/gas/altitudeRule.ts';
import { COMMON_HEATING_VALUES } from '../../../domain/gas/commonHeatingValues.ts';
import { deviationFromRating, type GasInput, gasInput } from '../../../domain/gas/gasInput.ts';
import { heatingValueAtBase } from '../../../domain/gas/heatingValueAtBase.ts';
import { meteredRate } from '../../../domain/gas/meterTiming.ts';
import { volumeFactor } from '../../../domain/gas/volumeFactor.ts';
import {
  btuPerFt3ToMjPerM3,
  cubicFeetToCubicMetres,
  cubicMetresToCubicFeet,
  fahrenheitToCelsius,
  feetToMetres,
  inWcToMbar,
  kwToBtuPerH,
  kwToMbh,
  mbhToKw,
  mjPerM3ToBtuPerFt3,
  psiToInWc,
  psiToKpa,
} from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

const ONE_CUBIC_FOOT_M3 = cubicFeetToCubicMetres(1);

function clocked(turns: number, elapsedS: number, btuPerFt3: number): GasInput {
  return unwrap(
    gasInput({
      timing: { dialM3: ONE_CUBIC_FOOT_M3, turns, elapsedS },
      volumeFactor: 1,
      heatingValueMjPerM3: btuPerFt3ToMjPerM3(btuPerFt3),
      basis: 'gross',
    }),
  );
}

const coldDay = () => clocked(1, 17, 1010);
const againstRating = () => unwrap(deviationFromRating({ measured: coldDay(), siteRatingKw: mbhToKw(210) }));

function ratingMbh(rule: AltitudeRule, elevationFt: number): number {
  return kwToMbh(unwrap(siteRatingKw({ ratedInputKw: mbhToKw(100), rule, elevationM: feetToMetres(elevationFt) })));
}

const FOUR_PCT_ABOVE_2000: AltitudeRule = { method: 'per-1000-ft', pct: 4, fromFt: 2000, countedFrom: 'threshold' };
const TWO_PCT_FROM_SEA_LEVEL: AltitudeRule = { method: 'per-1000-ft', pct: 2, fromFt: 0, countedFrom: 'sea-level' };

function usFactor(pressureInWc: number, barometerPsia: number): number {
  return unwrap(
    volumeFactor({
      gas: {
        barometerKpaAbs: psiToKpa(barometerPsia),
        pressureMbarG: inWcToMbar(pressureInWc),
        temperatureC: fahrenheitToCelsius(60),
      },
      compensation: { kind: 'none' },
      base: { kind: 'at-base', baseC: fahrenheitToCelsius(60), baseKpaAbs: psiToKpa(14.696) },
    }),
  );
}

const rows: readonly CheckRow[] = [
  {
    id: 'FLD-01',
    inputs: '1 ft³ in 17 s, 1010 Btu/ft³',
    quantity: 'input, Btu/h',
    expected: 213_900,
    tolerance: 50,
    kind: 'C',
    source: '3600/17 × 1010',
    compute: () => kwToBtuPerH(coldDay().inputKw),
  },
  {
    id: 'FLD-02',
    inputs: 'same, +1 s',
    quantity: 'lowest input, Btu/h',
    expected: 202_000,
    tolerance: 1,
    kind: 'C',
    source: '3600/18 × 1010',
    compute: () => kwToBtuPerH(coldDay().lowestKw),
  },
  {
    id: 'FLD-03',
    inputs: 'same, −1 s',
    quantity: 'highest input, Btu/h',
    expected: 227_250,
    tolerance: 1,
    kind: 'C',
    source: '3600/16 × 1010',
    compute: () => kwToBtuPerH(coldDay().highestKw),
  },
  {
    id: 'FLD-04',
    inputs: 'same against a rating of 210 000 Btu/h',
    quantity: 'deviation, %',
    expected: 1.9,
    tolerance: 0.06,
    kind: 'C',
    source: 'the rounded 213 900/210 000 − 1; unrounded it is 1.85',
    compute: () => againstRating().deviationPct,
  },
  {
    id: 'FLD-05',
    inputs: '2 turns of a 1 ft³ dial in 70 s, 1025 Btu/ft³',
    quantity: 'input, Btu/h',
    expected: 105_400,
    tolerance: 50,
    kind: 'C',
    source: '2 × 3600/70 × 1025',
    compute: () => kwToBtuPerH(clocked(2, 70, 1025).inputKw),
  },
  {
    id: 'FLD-06',
    inputs: '100 MBH at 9000 ft, 4 % per 1000 ft from sea level',
    quantity: 'site rating, MBH',
    expected: 64,
    tolerance: 1e-6,
    kind: 'C',
    source: '100 × (1 − 0.04 × 9)',
    compute: () => ratingMbh(US_COMMON_ALTITUDE_RULE, 9000),
  },
  {
    id: 'FLD-07',
    inputs: 'same, 4 % per 1000 ft above 2000 ft',
    quantity: 'site rating, MBH',
    expected: 72,
    tolerance: 1e-6,
    kind: 'C',
    source: '100 × (1 − 0.04 × 7)',
    compute: () => ratingMbh(FOUR_PCT_ABOVE_2000, 9000),
  },
  {
    id: 'FLD-08',
    inputs: 'same, 2 % per 1000 ft from sea level',
    quantity: 'site rating, MBH',
    expected: 82,
    tolerance: 1e-6,
    kind: 'C',
    source: '100 × (1 − 0.02 × 9)',
    compute: () => ratingMbh(TWO_PCT_FROM_SEA_LEVEL, 9000),
  },
  {
    id: 'FLD-09',
    inputs: 'metres typed as feet: 2743',
    quantity: 'site rating, MBH',
    expected: 94.5,
    tolerance: 0.05,
    kind: 'C',
    source: '100 × (1 − 0.02 × 2.743)',
    compute: () => ratingMbh(TWO_PCT_FROM_SEA_LEVEL, 2743),
  },
  {
    id: 'FLD-10',
    inputs: '3000 ft: both readings of the common US rule',
    quantity: 'difference of the multipliers, points',
    expected: 8,
    tolerance: 1e-6,
    kind: 'C',
    source: '−12 % against −4 %',
    compute: () => ratingMbh(FOUR_PCT_ABOVE_2000, 3000) - ratingMbh(US_COMMON_ALTITUDE_RULE, 3000),
  },
  {
    id: 'FLD-11',
    inputs: 'gauge pressure 7 in w.c. at sea level',
    quantity: 'volume factor',
    expected: 1.017,
    tolerance: 0.0005,
    kind: 'C',
    source: '7 in w.c. adds 1.7 %',
    compute: () => usFactor(7, 14.696),
  },
  {
    id: 'FLD-12',
    inputs: 'meter at a fixed 2 psi',
    quantity: 'volume factor',
    expected: 1.13,
    tolerance: 0.01,
    kind: 'C',
    source: 'F ≈ 1.13: (14.696 + 2)/14.696 = 1.136',
    compute: () => usFactor(psiToInWc(2), 14.696),
  },
  {
    id: 'FLD-13',
    inputs: '1036 Btu/ft³ at 14.73 psia → 14.696 psia, 60 °F',
    quantity: 'heating value, Btu/ft³',
    expected: 1033.6,
    tolerance: 0.05,
    kind: 'C',
    source: '1036 × 14.696/14.73',
    compute: () =>
      mjPerM3ToBtuPerFt3(
        unwrap(
          heatingValueAtBase({
            heatingValueMjPerM3: btuPerFt3ToMjPerM3(1036),
            from: { baseC: fahrenheitToCelsius(60), baseKpaAbs: psiToKpa(14.73) },
            to: { baseC: fahrenheitToCelsius(60), baseKpaAbs: psiToKpa(14.696) },
          }),
        ),
      ),
  },
  {
    id: 'FLD-14',
    inputs: '40 MJ/m³ at 0 °C → 15 °C, 101.325 kPa',
    quantity: 'heating value, MJ/m³',
    expected: 37.918,
    tolerance: 0.001,
    kind: 'C',
    source: '40 × 273.15/288.15',
    compute: () =>
      unwrap(
        heatingValueAtBase({
          heatingValueMjPerM3: 40,
          from: { baseC: 0, baseKpaAbs: 101.325 },
          to: { baseC: 15, baseKpaAbs: 101.325 },
        }),
      ),
  },
  {
    id: 'FLD-15',
    inputs: 'natural gas, default',
    quantity: 'heating value, Btu/scf',
    expected: 1026,
    tolerance: 1e-6,
    kind: 'P',
    source: '40 CFR 98 Table C-1 [B]',
    compute: () => mjPerM3ToBtuPerFt3(COMMON_HEATING_VALUES['natural-gas'].hhvMjPerM3),
  },
  {
    id: 'FLD-16',
    inputs: 'propane, default',
    quantity: 'heating value, Btu/scf',
    expected: 2516,
    tolerance: 1e-6,
    kind: 'P',
    source: '40 CFR 98 Table C-1 [B]',
    compute: () => mjPerM3ToBtuPerFt3(COMMON_HEATING_VALUES.propane.hhvMjPerM3),
  },
  {
    id: 'FLD-17',
    inputs: 'butane, default',
    quantity: 'heating value, Btu/scf',
    expected: 3260,
    tolerance: 1e-6,
    kind: 'C',
    source: 'calc, ideal gas',
    compute: () => mjPerM3ToBtuPerFt3(COMMON_HEATING_VALUES.butane.hhvMjPerM3),
  },
  {
    id: 'FLD-18',
    inputs: '1 ft³ in 17 s, 1010 Btu/ft³ against 210 000 Btu/h',
    quantity: 'deviation, %',
    expected: 1.84874,
    tolerance: 0.00001,
    kind: 'C',
    source: '100 × (3600/17 × 1010/210 000 − 1) by hand',
    compute: () => againstRating().deviationPct,
  },
];

describeCheckRows('meter and altitude cases (FLD)', rows, { published: 2, computed: 16 });

describe('what the cases say in words', () => {
  it('2 % over on a cold day cannot be told apart from the rating, and the timing is too short', () => {
    expect(againstRating().isRatingInsideInterval).toBe(true);
    expect(coldDay().isLongEnough).toBe(false);
  });

  it('±0.5 s on 36 s is ±1.4 %', () => {
    const { rateM3PerH, lowestM3PerH, highestM3PerH } = unwrap(
      meteredRate({ dialM3: ONE_CUBIC_FOOT_M3, turns: 1, elapsedS: 36, timingUncertaintyS: 0.5 }),
    );
    expect(100 * (rateM3PerH / lowestM3PerH - 1)).toBeCloseTo(1.4, 1);
    expect(100 * (highestM3PerH / rateM3PerH - 1)).toBeCloseTo(1.4, 1);
  });

  it('a ½ ft³ dial taken for a 2 ft³ one is a factor of 4', () => {
    const rate = (dialFt3: number) =>
      cubicMetresToCubicFeet(
        unwrap(meteredRate({ dialM3: cubicFeetToCubicMetres(dialFt3), turns: 2, elapsedS: 60 })).rateM3PerH,
      );
    expect(rate(2) / rate(0.5)).toBeCloseTo(4, 12);
  });

  it('a sheet without a rule leaves the plate alone up to 2000 ft and says so above', () => {
    const at = (elevationFt: number) =>
      siteRatingKw({
        ratedInputKw: 30,
        rule: { method: 'not-on-sheet' },
        elevationM: feetToMetres(elevationFt),
      });
    expect(at(2000)).toEqual({ ok: true, value: 30 });
    expect(at(9000)).toEqual({ ok: false, error: { code: 'altitude-rule-not-on-sheet' } });
  });
});
