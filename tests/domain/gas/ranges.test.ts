import { describe, expect, it } from 'vitest';
import {
  type AltitudeRule,
  altitudeMultiplier,
  CANADA_ALTITUDE_RULE,
  siteRatingKw,
  US_COMMON_ALTITUDE_RULE,
} from '../../../domain/gas/altitudeRule.ts';
import { deviationFromRating, type GasInput, gasInput, netInputFromGross } from '../../../domain/gas/gasInput.ts';
import { heatingValueAtBase } from '../../../domain/gas/heatingValueAtBase.ts';
import { meteredRate } from '../../../domain/gas/meterTiming.ts';
import {
  highPressurePipeCapacityM3PerH,
  highPressurePipeDiameterMm,
  lowPressurePipeCapacityM3PerH,
  lowPressurePipeDiameterMm,
  PIPE_GASES,
  pipeGasCr,
} from '../../../domain/gas/pipeSizing.ts';
import { standardAtmosphere } from '../../../domain/gas/standardAtmosphere.ts';
import { type GasAtMeter, type MeterCompensation, volumeFactor } from '../../../domain/gas/volumeFactor.ts';
import { feetToMetres, psiToKpa } from '../../../domain/quantity/conversions.ts';
import { describeRanges, type RangeCase } from '../combustion/describeRange.ts';

const TIMING = { dialM3: 0.01, turns: 2, elapsedS: 60, timingUncertaintyS: 1 };
const GAS: GasAtMeter = { barometerKpaAbs: 100, pressureMbarG: 20, temperatureC: 10 };
const BASE = { baseC: 15, baseKpaAbs: 101.325 };
const NATURAL_GAS = PIPE_GASES['natural-gas'];
const LOW_RUN = { gas: NATURAL_GAS, equivalentLengthM: 20, pressureDropKpa: 0.125 };
const HIGH_RUN = { gas: NATURAL_GAS, equivalentLengthM: 20, inletKpaAbs: 122, outletKpaAbs: 108 };
const LENGTH: readonly [number, number] = [0.3, 2000];

function withMeterGas(field: keyof GasAtMeter, min: number, max: number): RangeCase {
  return {
    quantity: field,
    min,
    max,
    call: (value) =>
      volumeFactor({
        gas: { ...GAS, [field]: value },
        compensation: { kind: 'none' },
        base: { kind: 'at-base', ...BASE },
      }),
  };
}

function withCompensation(
  quantity: string,
  [min, max]: readonly [number, number],
  of: (value: number) => MeterCompensation,
): RangeCase {
  return {
    quantity,
    min,
    max,
    call: (value) => volumeFactor({ gas: GAS, compensation: of(value), base: { kind: 'at-base', ...BASE } }),
  };
}

describeRanges('standard atmosphere', [
  { quantity: 'elevationM', min: -500, max: 11_000, call: (elevationM) => standardAtmosphere({ elevationM }) },
]);

describeRanges('meter timing', [
  { quantity: 'dialM3', min: 0.0001, max: 10, call: (dialM3) => meteredRate({ ...TIMING, dialM3 }) },
  { quantity: 'turns', min: 0.1, max: 1000, call: (turns) => meteredRate({ ...TIMING, turns }) },
  { quantity: 'elapsedS', min: 5, max: 7200, call: (elapsedS) => meteredRate({ ...TIMING, elapsedS }) },
  {
    quantity: 'timingUncertaintyS',
    min: 0,
    max: 2,
    call: (timingUncertaintyS) => meteredRate({ ...TIMING, timingUncertaintyS }),
  },
]);

describeRanges('volume factor', [
  withMeterGas('barometerKpaAbs', 50, 110),
  withMeterGas('pressureMbarG', -5, 1000),
  withMeterGas('temperatureC', -30, 50),
  withCompensation('toC', [0, 25], (toC) => ({ kind: 'temperature', toC })),
  withCompensation('toKpaAbs', [90, 110], (toKpaAbs) => ({ kind: 'temperature-pressure', toC: 15, toKpaAbs })),
  {
    quantity: 'baseC',
    min: 0,
    max: 25,
    call: (baseC) =>
      volumeFactor({ gas: GAS, compensation: { kind: 'none' }, base: { kind: 'at-base', ...BASE, baseC } }),
  },
  {
    quantity: 'baseKpaAbs',
    min: 90,
    max: 110,
    call: (baseKpaAbs) =>
      volumeFactor({ gas: GAS, compensation: { kind: 'none' }, base: { kind: 'at-base', ...BASE, baseKpaAbs } }),
  },
]);

describeRanges('heating value at a base', [
  {
    quantity: 'heatingValueMjPerM3',
    min: 1,
    max: 200,
    call: (heatingValueMjPerM3) => heatingValueAtBase({ heatingValueMjPerM3, from: BASE, to: BASE }),
  },
  {
    quantity: 'baseC',
    min: 0,
    max: 25,
    call: (baseC) => heatingValueAtBase({ heatingValueMjPerM3: 38, from: { ...BASE, baseC }, to: BASE }),
  },
  {
    quantity: 'baseKpaAbs',
    min: 90,
    max: 110,
    call: (baseKpaAbs) => heatingValueAtBase({ heatingValueMjPerM3: 38, from: BASE, to: { ...BASE, baseKpaAbs } }),
  },
]);

const INPUT = { timing: TIMING, volumeFactor: 1, heatingValueMjPerM3: 38, basis: 'gross' } as const;
const MEASURED: GasInput = { basis: 'gross', inputKw: 30, lowestKw: 29, highestKw: 31, isLongEnough: true };

describeRanges('gas input', [
  { quantity: 'volumeFactor', min: 0.4, max: 3, call: (factor) => gasInput({ ...INPUT, volumeFactor: factor }) },
  {
    quantity: 'heatingValueMjPerM3',
    min: 1,
    max: 200,
    call: (heatingValueMjPerM3) => gasInput({ ...INPUT, heatingValueMjPerM3 }),
  },
  {
    quantity: 'elapsedS',
    min: 5,
    max: 7200,
    call: (elapsedS) => gasInput({ ...INPUT, timing: { ...TIMING, elapsedS } }),
  },
  {
    quantity: 'inputKwGross',
    min: 0,
    max: 10_000,
    call: (inputKwGross) => netInputFromGross({ inputKwGross, netToGrossRatio: 0.9 }),
  },
  {
    quantity: 'netToGrossRatio',
    min: 0.8,
    max: 1,
    call: (netToGrossRatio) => netInputFromGross({ inputKwGross: 30, netToGrossRatio }),
  },
  {
    quantity: 'siteRatingKw',
    min: 0.5,
    max: 10_000,
    call: (ratingKw) => deviationFromRating({ measured: MEASURED, siteRatingKw: ratingKw }),
  },
]);

describeRanges('altitude rule', [
  {
    quantity: 'elevationM',
    min: -500,
    max: 6000,
    call: (elevationM) => altitudeMultiplier({ rule: { method: 'no-derate' }, elevationM }),
  },
  {
    quantity: 'ratedInputKw',
    min: 0.5,
    max: 10_000,
    call: (ratedInputKw) => siteRatingKw({ ratedInputKw, rule: { method: 'no-derate' }, elevationM: 0 }),
  },
]);

describeRanges('pipe sizing', [
  {
    quantity: 'insideDiameterMm',
    min: 5,
    max: 300,
    call: (insideDiameterMm) => lowPressurePipeCapacityM3PerH({ ...LOW_RUN, insideDiameterMm }),
  },
  {
    quantity: 'insideDiameterMm',
    min: 5,
    max: 300,
    call: (insideDiameterMm) => highPressurePipeCapacityM3PerH({ ...HIGH_RUN, insideDiameterMm }),
  },
  {
    quantity: 'flowM3PerH',
    min: 0.01,
    max: 10_000,
    call: (flowM3PerH) => lowPressurePipeDiameterMm({ ...LOW_RUN, flowM3PerH }),
  },
  {
    quantity: 'flowM3PerH',
    min: 0.01,
    max: 10_000,
    call: (flowM3PerH) => highPressurePipeDiameterMm({ ...HIGH_RUN, flowM3PerH }),
  },
  {
    quantity: 'equivalentLengthM',
    min: LENGTH[0],
    max: LENGTH[1],
    call: (equivalentLengthM) => lowPressurePipeCapacityM3PerH({ ...LOW_RUN, insideDiameterMm: 20, equivalentLengthM }),
  },
  {
    quantity: 'equivalentLengthM',
    min: LENGTH[0],
    max: LENGTH[1],
    call: (equivalentLengthM) => highPressurePipeDiameterMm({ ...HIGH_RUN, flowM3PerH: 20, equivalentLengthM }),
  },
  {
    quantity: 'pressureDropKpa',
    min: 0.001,
    max: psiToKpa(1.5),
    call: (pressureDropKpa) => lowPressurePipeDiameterMm({ ...LOW_RUN, flowM3PerH: 20, pressureDropKpa }),
  },
  {
    quantity: 'inletKpaAbs',
    min: 60,
    max: 1000,
    call: (inletKpaAbs) =>
      highPressurePipeCapacityM3PerH({ ...HIGH_RUN, insideDiameterMm: 20, inletKpaAbs, outletKpaAbs: 50 }),
  },
  {
    quantity: 'outletKpaAbs',
    min: 50,
    max: 121.9,
    call: (outletKpaAbs) => highPressurePipeCapacityM3PerH({ ...HIGH_RUN, insideDiameterMm: 20, outletKpaAbs }),
  },
  {
    quantity: 'specificGravity',
    min: 0.3,
    max: 3,
    call: (specificGravity) => pipeGasCr({ specificGravity, viscosityCp: 0.012 }),
  },
  {
    quantity: 'viscosityCp',
    min: 0.004,
    max: 0.03,
    call: (viscosityCp) => pipeGasCr({ specificGravity: 0.6, viscosityCp }),
  },
]);

describe('altitude rules at their edges', () => {
  const at = (rule: AltitudeRule, elevationFt: number) =>
    altitudeMultiplier({ rule, elevationM: feetToMetres(elevationFt) });
  const TEN_PCT: AltitudeRule = { method: 'per-1000-ft', pct: 10, fromFt: 0, countedFrom: 'sea-level' };

  it('never takes more than 70 % off: a rule carried that far is not one', () => {
    expect(at(TEN_PCT, 6990)).toMatchObject({ ok: true });
    expect(at(TEN_PCT, 7020)).toMatchObject({ ok: false, error: { quantity: 'altitudeMultiplier' } });
  });

  it('never uprates, even where a rule says so', () => {
    expect(at({ ...TEN_PCT, pct: -1 }, 500)).toMatchObject({ ok: false, error: { quantity: 'altitudeMultiplier' } });
  });

  it('holds a threshold given in feet through the rounding of metres', () => {
    for (const thresholdFt of [1000, 2000, 3280, 4500, 6562]) {
      const rule: AltitudeRule = { method: 'per-1000-ft', pct: 4, fromFt: thresholdFt, countedFrom: 'sea-level' };
      expect(at(rule, thresholdFt)).toEqual({ ok: true, value: 1 });
      expect(at(rule, thresholdFt + 1)).toMatchObject({
        ok: true,
        value: expect.closeTo(1 - (0.04 * (thresholdFt + 1)) / 1000, 9),
      });
    }
  });

  it('asks the authority above the Canadian band, and takes nothing off below it', () => {
    expect(at(CANADA_ALTITUDE_RULE, 2000)).toEqual({ ok: true, value: 1 });
    expect(at(CANADA_ALTITUDE_RULE, 2001)).toEqual({ ok: true, value: 0.9 });
    expect(at(CANADA_ALTITUDE_RULE, 4500)).toEqual({ ok: true, value: 0.9 });
    expect(at(CANADA_ALTITUDE_RULE, 4501)).toMatchObject({ ok: false, error: { code: 'altitude-beyond-rule' } });
  });

  it('starts the common US rule right above 2000 ft, at 8 %', () => {
    expect(at(US_COMMON_ALTITUDE_RULE, 2000)).toEqual({ ok: true, value: 1 });
    expect(at(US_COMMON_ALTITUDE_RULE, 2001)).toMatchObject({ ok: true, value: expect.closeTo(0.91996, 9) });
  });

  it('takes a hundredth of a foot for rounding, and no more', () => {
    expect(at(US_COMMON_ALTITUDE_RULE, 2000.0099)).toEqual({ ok: true, value: 1 });
    expect(at(US_COMMON_ALTITUDE_RULE, 2000.01005)).toMatchObject({ ok: true, value: expect.closeTo(0.92, 6) });
  });

  it('does not fill a gap between two bands', () => {
    const rule: AltitudeRule = {
      method: 'bands',
      bands: [
        { fromFt: 2000, toFt: 3000, pct: 8 },
        { fromFt: 4000, toFt: 5000, pct: 16 },
      ],
    };
    expect(at(rule, 3500)).toMatchObject({ ok: false, error: { code: 'altitude-beyond-rule' } });
    expect(at(rule, 4600)).toEqual({ ok: true, value: 0.84 });
  });

  it('a site below sea level is not uprated', () => {
    expect(at(TEN_PCT, -300)).toEqual({ ok: true, value: 1 });
  });

  it('reads the plate unchanged where the sheet says there is no derate, at any height', () => {
    expect(at({ method: 'no-derate' }, 9000)).toEqual({ ok: true, value: 1 });
  });

  it('without a rule the plate stands up to 2000 ft and not a foot further', () => {
    expect(at({ method: 'not-on-sheet' }, 1999)).toEqual({ ok: true, value: 1 });
    expect(at({ method: 'not-on-sheet' }, 2005)).toMatchObject({ ok: false });
  });
});

describe('a timing long enough to trust', () => {
  it.each([
    [2, 30, true],
    [1.99, 119, false],
    [1, 120, true],
    [1, 119.5, false],
  ])('%s turns in %s s: %s', (turns, elapsedS, isLongEnough) => {
    expect(meteredRate({ dialM3: 0.01, turns, elapsedS })).toMatchObject({ ok: true, value: { isLongEnough } });
  });
});
