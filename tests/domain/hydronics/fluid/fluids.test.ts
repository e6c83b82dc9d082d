import { createRequire } from 'node:module';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boilingPoint } from '../../../../domain/hydronics/fluid/boilingPoint.ts';
import { glycolMassPct, glycolVolPct } from '../../../../domain/hydronics/fluid/glycolConcentration.ts';
import { glycolFreezingPoint } from '../../../../domain/hydronics/fluid/glycolFreezingPoint.ts';
import type { Glycol } from '../../../../domain/hydronics/fluid/glycolKind.ts';
import { glycolProperties } from '../../../../domain/hydronics/fluid/glycolProperties.ts';
import { if97RegionOne } from '../../../../domain/hydronics/fluid/if97RegionOne.ts';
import { liquidExpansion } from '../../../../domain/hydronics/fluid/liquidExpansion.ts';
import { fluidProperties, WATER } from '../../../../domain/hydronics/fluid/systemFluid.ts';
import { waterProperties, waterVapourPressure } from '../../../../domain/hydronics/fluid/waterProperties.ts';
import { waterViscosity } from '../../../../domain/hydronics/fluid/waterViscosity.ts';
import { saturationPressureMpaAbs } from '../../../../domain/hydronics/waterSaturation.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges, expectSoundAnswer } from '../describeRanges.ts';

/** The library ships no types. */
const psychrolib: {
  readonly SI: number;
  SetUnitSystem(system: number): void;
  GetSatVapPres(dryBulbC: number): number;
} = createRequire(import.meta.url)('psychrolib');

const glycolKind = fc.constantFrom<Glycol>('propylene-glycol', 'ethylene-glycol');

describe('water', () => {
  it('never answers with something else than numbers from 0 to 120 °C', async () => {
    await fc.assert(
      fc.property(fc.double({ min: 0, max: 120, noNaN: true }), (temperatureC) => {
        expectSoundAnswer(waterProperties({ temperatureC }));
      }),
    );
  });

  it('answers all along the saturation line, however the pressure rounds', () => {
    for (let step = 0; step <= 2000; step += 1) {
      const result = waterProperties({ temperatureC: 100 + step / 100 });
      if (!result.ok) throw new Error(`${100 + step / 100} °C: ${JSON.stringify(result.error)}`);
    }
  });

  it('thins and lightens with heat from 4 °C on', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 4.1, max: 119, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (temperatureC, warmerByK) => {
          const cool = unwrap(waterProperties({ temperatureC }));
          const warm = unwrap(waterProperties({ temperatureC: temperatureC + warmerByK }));
          expect(warm.densityKgPerM3).toBeLessThan(cool.densityKgPerM3);
          expect(warm.viscosityPaS).toBeLessThan(cool.viscosityPaS);
        },
      ),
    );
  });

  it('has the vapour pressure of an ASHRAE psychrometric library, within 0.1 %', async () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    await fc.assert(
      fc.property(fc.double({ min: 0.02, max: 120, noNaN: true }), (temperatureC) => {
        const other = psychrolib.GetSatVapPres(temperatureC) / 1000;
        expect(Math.abs(unwrap(waterVapourPressure({ temperatureC })) / other - 1)).toBeLessThanOrEqual(1e-3);
      }),
    );
  });

  it('stays at one atmosphere below 100 °C and goes along the saturation line above', () => {
    const at = (temperatureC: number, pressureMpaAbs: number) =>
      unwrap(if97RegionOne({ temperatureK: temperatureC + 273.15, pressureMpaAbs })).densityKgPerM3;
    expect(unwrap(waterProperties({ temperatureC: 60 })).densityKgPerM3).toBe(at(60, 0.101325));
    const saturation = unwrap(saturationPressureMpaAbs(115 + 273.15));
    expect(unwrap(waterProperties({ temperatureC: 115 })).densityKgPerM3).toBeCloseTo(at(115, saturation), 9);
  });

  it('boils where its vapour pressure is the pressure', async () => {
    await fc.assert(
      fc.property(fc.double({ min: 60, max: 119, noNaN: true }), (temperatureC) => {
        const gaugePressureBarG = (unwrap(waterVapourPressure({ temperatureC })) - 101.325) / 100;
        expect(unwrap(boilingPoint({ gaugePressureBarG }))).toBeCloseTo(temperatureC, 5);
      }),
    );
  });

  it('boils cooler where the air is thin', () => {
    expect(unwrap(boilingPoint({ gaugePressureBarG: 0, atmosphericPressureKpaAbs: 79.5 }))).toBeLessThan(94);
    expect(unwrap(boilingPoint({ gaugePressureBarG: 0 }))).toBeCloseTo(99.97, 2);
  });

  it('refuses what would boil away before the gauge', () => {
    expect(boilingPoint({ gaugePressureBarG: -0.9, atmosphericPressureKpaAbs: 90 })).toMatchObject({
      ok: false,
      error: { quantity: 'pressureMpaAbs', validMin: 0.001 },
    });
    expect(boilingPoint({ gaugePressureBarG: -0.9, atmosphericPressureKpaAbs: 91 })).toMatchObject({ ok: true });
  });
});

describe('glycol', () => {
  it('never answers with something else than numbers between its freezing point and 100 °C', async () => {
    await fc.assert(
      fc.property(
        glycolKind,
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (glycol, massPct, share) => {
          const freezingC = unwrap(glycolFreezingPoint({ glycol, glycolMassPct: massPct }));
          const temperatureC = Math.min(100, freezingC + share * (100 - freezingC));
          expectSoundAnswer(glycolProperties({ glycol, glycolMassPct: massPct, temperatureC }));
        },
      ),
    );
  });

  it('freezes lower the more there is of it', async () => {
    await fc.assert(
      fc.property(glycolKind, fc.double({ min: 0, max: 59, noNaN: true }), (glycol, massPct) => {
        const less = unwrap(glycolFreezingPoint({ glycol, glycolMassPct: massPct }));
        expect(unwrap(glycolFreezingPoint({ glycol, glycolMassPct: massPct + 1 }))).toBeLessThan(less);
      }),
    );
  });

  it('is refused below its freezing point', () => {
    const freezingC = unwrap(glycolFreezingPoint({ glycol: 'propylene-glycol', glycolMassPct: 30 }));
    const at = (temperatureC: number) =>
      glycolProperties({ glycol: 'propylene-glycol', glycolMassPct: 30, temperatureC });
    expect(at(freezingC)).toMatchObject({ ok: true });
    expect(at(freezingC - 0.001)).toMatchObject({ ok: false, error: { quantity: 'temperatureC', validMax: 100 } });
  });

  it('goes from volume to mass and back', async () => {
    await fc.assert(
      fc.property(glycolKind, fc.double({ min: 0, max: 100, noNaN: true }), (glycol, volPct) => {
        const massPct = unwrap(glycolMassPct({ glycol, glycolVolPct: volPct }));
        expect(unwrap(glycolVolPct({ glycol, glycolMassPct: massPct }))).toBeCloseTo(volPct, 9);
        expect(massPct).toBeGreaterThanOrEqual(volPct - 1e-9);
      }),
    );
  });

  it('mixes by the densities the definition names', () => {
    const half = (glycol: Glycol) => unwrap(glycolMassPct({ glycol, glycolVolPct: 50 }));
    expect(half('propylene-glycol')).toBeCloseTo((100 * 1036) / (1036 + 998.2), 10);
    expect(half('ethylene-glycol')).toBeCloseTo((100 * 1113) / (1113 + 998.2), 10);
  });

  // Lange's Handbook of Chemistry, 15th ed., Table 5.13: PG by volume. Another product and another reading of "freezes".
  it.each([
    [20, -6.7],
    [30, -12.8],
    [40, -20.6],
    [50, -33.3],
  ])('%s % by volume freezes near the handbook’s %s °C', (volPct, handbookC) => {
    const massPct = unwrap(glycolMassPct({ glycol: 'propylene-glycol', glycolVolPct: volPct }));
    const freezingC = unwrap(glycolFreezingPoint({ glycol: 'propylene-glycol', glycolMassPct: massPct }));
    expect(Math.abs(freezingC - handbookC)).toBeLessThanOrEqual(1.3);
  });
});

describe('liquidExpansion', () => {
  it('is nothing without heating and never stops growing', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 5, max: 90, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        (coldC, riseK) => {
          const grown = unwrap(liquidExpansion({ fluid: WATER, coldC, hotC: coldC + riseK }));
          expect(grown).toBeGreaterThan(0);
          expect(unwrap(liquidExpansion({ fluid: WATER, coldC, hotC: coldC }))).toBe(0);
        },
      ),
    );
  });

  it('refuses cooling', () => {
    expect(liquidExpansion({ fluid: WATER, coldC: 60, hotC: 59 })).toMatchObject({
      ok: false,
      error: { quantity: 'hotC' },
    });
  });

  it('is larger with glycol, by 40–60 %', () => {
    const water = unwrap(liquidExpansion({ fluid: WATER, coldC: 10, hotC: 80 }));
    const mixed = unwrap(
      liquidExpansion({ fluid: { kind: 'propylene-glycol', glycolMassPct: 40 }, coldC: 10, hotC: 80 }),
    );
    expect(mixed / water).toBeGreaterThan(1.4);
    expect(mixed / water).toBeLessThan(1.65);
  });
});

describe('fluidProperties', () => {
  it('asks the right formula', () => {
    expect(fluidProperties({ fluid: WATER, temperatureC: 40 })).toEqual(waterProperties({ temperatureC: 40 }));
    for (const kind of ['propylene-glycol', 'ethylene-glycol'] as const) {
      expect(fluidProperties({ fluid: { kind, glycolMassPct: 30 }, temperatureC: 40 })).toEqual(
        glycolProperties({ glycol: kind, glycolMassPct: 30, temperatureC: 40 }),
      );
    }
  });
});

const saturation623 = unwrap(saturationPressureMpaAbs(623.15));
describeRanges('if97RegionOne', if97RegionOne, { temperatureK: 350, pressureMpaAbs: 1 }, [
  ['temperatureK', 273.15, 623.15, { pressureMpaAbs: 50 }],
  ['pressureMpaAbs', saturation623, 100, { temperatureK: 623.15 }],
]);
describeRanges('waterViscosity', waterViscosity, { temperatureK: 350, densityKgPerM3: 970 }, [
  ['temperatureK', 273.15, 623.15],
  ['densityKgPerM3', 500, 1100],
]);
describeRanges('waterProperties', waterProperties, { temperatureC: 60 }, [['temperatureC', 0, 120]]);
describeRanges('waterVapourPressure', waterVapourPressure, { temperatureC: 60 }, [['temperatureC', 0, 120]]);
describeRanges('boilingPoint', boilingPoint, { gaugePressureBarG: 1, atmosphericPressureKpaAbs: 100 }, [
  ['gaugePressureBarG', -0.9, 20],
  ['atmosphericPressureKpaAbs', 50, 110],
]);
describeRanges('glycolFreezingPoint', glycolFreezingPoint, { glycol: 'propylene-glycol' as const, glycolMassPct: 30 }, [
  ['glycolMassPct', 0, 60],
]);
describeRanges(
  'glycolProperties',
  glycolProperties,
  { glycol: 'propylene-glycol' as const, glycolMassPct: 30, temperatureC: 40 },
  [
    ['glycolMassPct', 0, 60],
    ['temperatureC', null, 100],
  ],
);
describeRanges('glycolMassPct', glycolMassPct, { glycol: 'ethylene-glycol' as const, glycolVolPct: 30 }, [
  ['glycolVolPct', 0, 100],
]);
describeRanges('glycolVolPct', glycolVolPct, { glycol: 'ethylene-glycol' as const, glycolMassPct: 30 }, [
  ['glycolMassPct', 0, 100],
]);
describeRanges('liquidExpansion', liquidExpansion, { fluid: WATER, coldC: 10, hotC: 60 }, [
  ['coldC', 0, null],
  ['hotC', 10, 120],
]);
