import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AltitudeRule, altitudeMultiplier } from '../../../domain/gas/altitudeRule.ts';
import { deviationFromRating, gasInput } from '../../../domain/gas/gasInput.ts';
import { heatingValueAtBase } from '../../../domain/gas/heatingValueAtBase.ts';
import { meteredRate } from '../../../domain/gas/meterTiming.ts';
import {
  highPressurePipeCapacityM3PerH,
  highPressurePipeDiameterMm,
  lowPressurePipeCapacityM3PerH,
  lowPressurePipeDiameterMm,
  PIPE_GASES,
} from '../../../domain/gas/pipeSizing.ts';
import { standardAtmosphere } from '../../../domain/gas/standardAtmosphere.ts';
import { type GasAtMeter, volumeFactor } from '../../../domain/gas/volumeFactor.ts';
import { unwrap } from '../../../domain/result.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Rounding of double arithmetic only. */
const SAME = 1e-9;
function expectSame(actual: number, expected: number): void {
  expect(Math.abs(actual / expected - 1)).toBeLessThanOrEqual(SAME);
}

describe('meter timing', () => {
  const anyTiming = fc.record({ dialM3: between(0.001, 1), turns: between(1, 20), elapsedS: between(5, 600) });

  it('should hold the rate inside its interval, and narrow with a longer run', () => {
    fc.assert(
      fc.property(anyTiming, (timing) => {
        const { rateM3PerH, lowestM3PerH, highestM3PerH } = unwrap(meteredRate(timing));
        expect(lowestM3PerH).toBeLessThan(rateM3PerH);
        expect(highestM3PerH).toBeGreaterThan(rateM3PerH);
        const longer = unwrap(meteredRate({ ...timing, turns: timing.turns * 2, elapsedS: timing.elapsedS * 2 }));
        expectSame(longer.rateM3PerH, rateM3PerH);
        expect(longer.highestM3PerH - longer.lowestM3PerH).toBeLessThan(highestM3PerH - lowestM3PerH);
      }),
    );
  });

  it('should take one second for the thumb unless told otherwise, and none when told so', () => {
    fc.assert(
      fc.property(anyTiming, (timing) => {
        expect(meteredRate(timing)).toEqual(meteredRate({ ...timing, timingUncertaintyS: 1 }));
        const exact = unwrap(meteredRate({ ...timing, timingUncertaintyS: 0 }));
        expect(exact.lowestM3PerH).toBe(exact.highestM3PerH);
      }),
    );
  });

  it('should carry the interval into the input and into the deviation', () => {
    fc.assert(
      fc.property(anyTiming, between(20, 110), between(0.8, 1.2), (timing, heatingValueMjPerM3, factor) => {
        const measured = unwrap(gasInput({ timing, volumeFactor: factor, heatingValueMjPerM3, basis: 'net' }));
        const rate = unwrap(meteredRate(timing));
        expectSame(measured.lowestKw / measured.inputKw, rate.lowestM3PerH / rate.rateM3PerH);
        expectSame(measured.highestKw / measured.inputKw, rate.highestM3PerH / rate.rateM3PerH);
        expect(measured.basis).toBe('net');
        fc.pre(measured.inputKw < 8000 && measured.inputKw > 1);
        const own = unwrap(deviationFromRating({ measured, siteRatingKw: measured.inputKw }));
        expect(Math.abs(own.deviationPct)).toBeLessThan(1e-9);
        expect(own.lowestPct).toBeLessThan(0);
        expect(own.highestPct).toBeGreaterThan(0);
        expect(own.isRatingInsideInterval).toBe(true);
        const far = unwrap(deviationFromRating({ measured, siteRatingKw: measured.highestKw * 1.0001 }));
        expect(far.isRatingInsideInterval).toBe(false);
        const low = unwrap(deviationFromRating({ measured, siteRatingKw: measured.lowestKw * 0.9999 }));
        expect(low.isRatingInsideInterval).toBe(false);
      }),
    );
  });
});

describe('volume factor', () => {
  const anyGas: fc.Arbitrary<GasAtMeter> = fc.record({
    barometerKpaAbs: between(60, 105),
    pressureMbarG: between(5, 200),
    temperatureC: between(-20, 40),
  });
  const anyBase = fc.record({ baseC: between(0, 25), baseKpaAbs: between(95, 105) });

  it('should book the same heat whatever base the heating value is stated at', () => {
    fc.assert(
      fc.property(anyGas, anyBase, anyBase, between(20, 110), (gas, base, other, heatingValueMjPerM3) => {
        const factorAt = (one: typeof base) =>
          unwrap(volumeFactor({ gas, compensation: { kind: 'none' }, base: { kind: 'at-base', ...one } }));
        const moved = unwrap(heatingValueAtBase({ heatingValueMjPerM3, from: base, to: other }));
        expectSame(factorAt(other) * moved, factorAt(base) * heatingValueMjPerM3);
      }),
    );
  });

  it('should leave temperature out for a temperature-compensated meter, and everything out for a full corrector', () => {
    fc.assert(
      fc.property(anyGas, anyBase, between(-20, 40), (gas, base, temperatureC) => {
        const at = (one: GasAtMeter, kind: 'temperature' | 'temperature-pressure') =>
          unwrap(
            volumeFactor({
              gas: one,
              compensation:
                kind === 'temperature'
                  ? { kind, toC: base.baseC }
                  : { kind, toC: base.baseC, toKpaAbs: base.baseKpaAbs },
              base: { kind: 'at-base', ...base },
            }),
          );
        expect(at({ ...gas, temperatureC }, 'temperature')).toBe(at(gas, 'temperature'));
        expectSame(at(gas, 'temperature'), (gas.barometerKpaAbs + gas.pressureMbarG / 10) / base.baseKpaAbs);
        expectSame(at(gas, 'temperature-pressure'), 1);
      }),
    );
  });

  it('should still move a compensated meter from its own reference to the base of the heating value', () => {
    const factor = unwrap(
      volumeFactor({
        gas: { barometerKpaAbs: 101.325, pressureMbarG: 0, temperatureC: -10 },
        compensation: { kind: 'temperature', toC: 15 },
        base: { kind: 'at-base', baseC: 0, baseKpaAbs: 101.325 },
      }),
    );
    expectSame(factor, 273.15 / 288.15);
  });

  it('should not correct a heating value stated per metered cubic metre a second time', () => {
    fc.assert(
      fc.property(anyGas, (gas) => {
        expect(volumeFactor({ gas, compensation: { kind: 'none' }, base: { kind: 'as-metered' } })).toEqual({
          ok: true,
          value: 1,
        });
      }),
    );
  });
});

describe('gas pipe', () => {
  const anyGas = fc.constantFrom(PIPE_GASES['natural-gas'], PIPE_GASES.propane);

  it('should give back the diameter that carries a flow, and the flow a diameter carries', () => {
    fc.assert(
      fc.property(
        anyGas,
        between(10, 100),
        between(1, 200),
        between(0.15, 5),
        (gas, insideDiameterMm, equivalentLengthM, pressureDropKpa) => {
          const low = { gas, equivalentLengthM, pressureDropKpa };
          const lowFlow = unwrap(lowPressurePipeCapacityM3PerH({ ...low, insideDiameterMm }));
          expectSame(unwrap(lowPressurePipeDiameterMm({ ...low, flowM3PerH: lowFlow })), insideDiameterMm);
          const high = { gas, equivalentLengthM, inletKpaAbs: 130 + pressureDropKpa, outletKpaAbs: 130 };
          const highFlow = unwrap(highPressurePipeCapacityM3PerH({ ...high, insideDiameterMm }));
          fc.pre(highFlow < 10_000);
          expectSame(unwrap(highPressurePipeDiameterMm({ ...high, flowM3PerH: highFlow })), insideDiameterMm);
        },
      ),
    );
  });

  it('should carry more when wider or allowed to lose more, less when longer or heavier', () => {
    fc.assert(
      fc.property(between(10, 90), between(1, 200), between(0.05, 5), (insideDiameterMm, lengthM, dropKpa) => {
        const capacity = (diameter: number, equivalentLengthM: number, pressureDropKpa: number, gas = 'natural-gas') =>
          unwrap(
            lowPressurePipeCapacityM3PerH({
              gas: PIPE_GASES[gas === 'propane' ? 'propane' : 'natural-gas'],
              insideDiameterMm: diameter,
              equivalentLengthM,
              pressureDropKpa,
            }),
          );
        const base = capacity(insideDiameterMm, lengthM, dropKpa);
        expect(capacity(insideDiameterMm * 1.1, lengthM, dropKpa)).toBeGreaterThan(base);
        expect(capacity(insideDiameterMm, lengthM, dropKpa * 1.1)).toBeGreaterThan(base);
        expect(capacity(insideDiameterMm, lengthM * 1.1, dropKpa)).toBeLessThan(base);
        expect(capacity(insideDiameterMm, lengthM, dropKpa, 'propane')).toBeLessThan(base);
      }),
    );
  });
});

describe('altitude', () => {
  it('should lower the pressure with every metre', () => {
    fc.assert(
      fc.property(between(-500, 10_900), (elevationM) => {
        const { pressureKpaAbs } = unwrap(standardAtmosphere({ elevationM }));
        expect(unwrap(standardAtmosphere({ elevationM: elevationM + 10 })).pressureKpaAbs).toBeLessThan(pressureKpaAbs);
      }),
    );
  });

  it('should never uprate, never rise with height, and take less off when counted from the threshold', () => {
    const anyRule = fc.record({ pct: between(0.5, 5), fromFt: between(0, 6000) });
    fc.assert(
      fc.property(anyRule, between(-400, 4000), ({ pct, fromFt }, elevationM) => {
        const multiplier = (countedFrom: 'sea-level' | 'threshold', atM: number) => {
          const rule: AltitudeRule = { method: 'per-1000-ft', pct, fromFt, countedFrom };
          return unwrap(altitudeMultiplier({ rule, elevationM: atM }));
        };
        const here = multiplier('sea-level', elevationM);
        expect(here).toBeLessThanOrEqual(1);
        expect(multiplier('sea-level', elevationM + 50)).toBeLessThanOrEqual(here);
        expect(multiplier('threshold', elevationM)).toBeGreaterThanOrEqual(here);
      }),
    );
  });
});
