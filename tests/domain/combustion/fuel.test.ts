import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  MOLAR_MASS_DRY_AIR_G_PER_MOL,
  MOLAR_MASS_N2_G_PER_MOL,
  MOLAR_MASS_O2_G_PER_MOL,
  MOLAR_MASS_WATER_G_PER_MOL,
  O2_IN_DRY_AIR_VOL_PCT,
} from '../../../domain/combustion/combustionConstants.ts';
import { combustionProducts } from '../../../domain/combustion/combustionProducts.ts';
import type { GasComposition } from '../../../domain/combustion/fuel.ts';
import {
  G20,
  G23,
  G24,
  G25,
  G30,
  G31,
  G222,
  HD_5,
  NG_US,
  OIL_2,
  SITE_FUELS,
} from '../../../domain/combustion/fuels.ts';
import { GAS_COMPONENT_KEYS } from '../../../domain/combustion/gasComponents.ts';
import { gasFuel } from '../../../domain/combustion/gasFuel.ts';
import { gasProperties } from '../../../domain/combustion/gasProperties.ts';
import { oilFuel } from '../../../domain/combustion/oilFuel.ts';
import {
  EN_437_STATE,
  US_14_73_PSIA_STATE,
  US_14_696_PSIA_IDEAL_STATE,
  US_14_696_PSIA_STATE,
} from '../../../domain/combustion/referenceState.ts';
import { unwrap } from '../../../domain/result.ts';

function gas(molePct: GasComposition) {
  return gasFuel({ name: 'test gas', family: 'natural-gas', molePct });
}

describe('a gas from its analysis', () => {
  /** At least 10 % methane and at most 9 % oxygen beside anything: a mixture that burns. */
  const anyMixture = fc
    .array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: GAS_COMPONENT_KEYS.length,
      maxLength: GAS_COMPONENT_KEYS.length,
    })
    .map((weights) => {
      const sum = weights.reduce((total, weight) => total + weight, 0) || 1;
      const scaled = GAS_COMPONENT_KEYS.map((key, index) => {
        const pct = (90 * (weights[index] ?? 0)) / sum;
        return [key, key === 'oxygen' ? pct / 10 : pct] as const;
      });
      const composition: Record<string, number> = Object.fromEntries(scaled);
      const others = Object.values(composition).reduce((total, pct) => total + pct, 0);
      // Adding up in another order may give a hair more than 100, which nobody can type.
      const methane = Math.min(100, (composition['methane'] ?? 0) + 100 - others);
      return { ...composition, methane } as GasComposition;
    });

  it('should be finite, positive and in order for any mixture that burns', () => {
    fc.assert(
      fc.property(anyMixture, (molePct) => {
        const fuel = unwrap(gas(molePct));
        const { hhvMjPerM3, lhvMjPerM3, relativeDensity, wobbeGrossMjPerM3, wobbeNetMjPerM3 } = unwrap(
          gasProperties({ fuel, state: EN_437_STATE }),
        );
        expect(fuel.co2MaxDryVolPct).toBeGreaterThan(0);
        expect(fuel.co2MaxDryVolPct).toBeLessThan(100);
        expect(fuel.dryFlueToAirRatio).toBeGreaterThan(0.7);
        expect(fuel.lhv25CKj).toBeLessThanOrEqual(fuel.hhv25CKj);
        expect(lhvMjPerM3).toBeLessThanOrEqual(hhvMjPerM3);
        expect(wobbeNetMjPerM3).toBeLessThanOrEqual(wobbeGrossMjPerM3);
        expect([hhvMjPerM3, relativeDensity, wobbeGrossMjPerM3].every((value) => value > 0 && value < 200)).toBe(true);
      }),
    );
  });

  it('should leave as much mass as it was given', () => {
    fc.assert(
      fc.property(anyMixture, fc.double({ min: 1, max: 3, noNaN: true }), (molePct, lambda) => {
        const fuel = unwrap(gas(molePct));
        const products = unwrap(combustionProducts({ fuel, lambda, airVapourMolPerMol: 0 }));
        const airMol = lambda * fuel.theoreticalAirMol;
        // The inert part of dry air is a little heavier than nitrogen: it holds the argon.
        const inertG =
          MOLAR_MASS_DRY_AIR_G_PER_MOL * airMol - (MOLAR_MASS_O2_G_PER_MOL * airMol * O2_IN_DRY_AIR_VOL_PCT) / 100;
        const givenG = fuel.massGPerAmount + airMol * MOLAR_MASS_DRY_AIR_G_PER_MOL;
        const leftG =
          products.co2Mol * 44.01 +
          products.o2Mol * MOLAR_MASS_O2_G_PER_MOL +
          products.waterMol * MOLAR_MASS_WATER_G_PER_MOL +
          fuel.fuelN2Mol * MOLAR_MASS_N2_G_PER_MOL +
          inertG;
        expect(Math.abs(leftG / givenG - 1)).toBeLessThan(1e-4);
      }),
    );
  });

  it('should refuse an analysis that misses a component', () => {
    expect(gas({ methane: 95 })).toEqual({ ok: false, error: { code: 'composition-does-not-add-up', sumPct: 95 } });
    expect(gas({})).toEqual({ ok: false, error: { code: 'composition-does-not-add-up', sumPct: 0 } });
  });

  it('should scale away the rounding of a printed analysis, and no more than that', () => {
    expect(unwrap(gas({ methane: 99.9 })).theoreticalO2Mol).toBeCloseTo(2, 12);
    expect(gas({ methane: 99.8995 })).toMatchObject({ ok: false });
    expect(unwrap(gas({ methane: 60, nitrogen: 40.0995 })).theoreticalO2Mol).toBeLessThan(1.2);
    expect(gas({ methane: 60, nitrogen: 40.1005 })).toMatchObject({ ok: false });
  });

  it.each([-1, 101, Number.NaN, Number.POSITIVE_INFINITY])('should refuse a share of %s %%', (pct) => {
    expect(gas({ methane: 100, nitrogen: pct })).toMatchObject({
      ok: false,
      error: { code: 'composition-share-out-of-range', component: 'nitrogen' },
    });
  });

  it('should refuse what does not burn, and hydrogen alone, whose flue gas has no CO2 to read', () => {
    expect(gas({ nitrogen: 100 })).toEqual({ ok: false, error: { code: 'composition-does-not-burn' } });
    expect(gas({ carbonDioxide: 100 })).toEqual({ ok: false, error: { code: 'composition-does-not-burn' } });
    expect(gas({ hydrogen: 100 })).toEqual({ ok: false, error: { code: 'composition-does-not-burn' } });
    expect(gas({ methane: 1, oxygen: 99 })).toEqual({ ok: false, error: { code: 'composition-does-not-burn' } });
  });

  it('should be as dense as its molar mass over that of air where both are taken as ideal (propane 1.52)', () => {
    const { relativeDensity } = unwrap(gasProperties({ fuel: G31, state: US_14_696_PSIA_IDEAL_STATE }));
    expect(relativeDensity).toBeCloseTo(44.096 / 28.96546, 12);
  });

  it('should hold more heat in a cubic foot at the higher base pressure', () => {
    const at = (state: typeof EN_437_STATE) => unwrap(gasProperties({ fuel: NG_US, state })).hhvMjPerM3;
    expect(at(US_14_73_PSIA_STATE) / at(US_14_696_PSIA_STATE)).toBeCloseTo(14.73 / 14.696, 5);
  });
});

describe('an oil from its analysis', () => {
  const analysis = { carbon: 86, hydrogen: 13, sulphur: 0.2, nitrogen: 0.3, oxygen: 0.5 };
  const oil = (massPct: typeof analysis) => oilFuel({ name: 'oil', family: 'distillate-oil', massPct, hhvMjPerKg: 45 });

  it('should need less air when part of the fuel is oxygen already', () => {
    const without = unwrap(oil({ ...analysis, nitrogen: 0.8, oxygen: 0 }));
    const withOxygen = unwrap(oil(analysis));
    expect(without.theoreticalO2Mol - withOxygen.theoreticalO2Mol).toBeCloseTo(5 / 31.998, 9);
    expect(withOxygen.fuelN2Mol).toBeCloseTo(3 / 28.013, 9);
    expect(withOxygen.so2Mol).toBeCloseTo(2 / 32.06, 9);
  });

  it('should not count SO2 as CO2', () => {
    expect(OIL_2.co2MaxDryVolPct).toBeCloseTo((100 * OIL_2.co2Mol) / OIL_2.dryFlueMol, 12);
  });

  it('should refuse what does not add up or does not burn', () => {
    expect(oil({ ...analysis, carbon: 80 })).toMatchObject({
      ok: false,
      error: { code: 'composition-does-not-add-up' },
    });
    expect(oil({ carbon: 0, hydrogen: 0, sulphur: 0, nitrogen: 100, oxygen: 0 })).toMatchObject({
      ok: false,
      error: { code: 'composition-does-not-burn' },
    });
  });
});

describe('the fuels known by name', () => {
  it('have the compositions their documents print (EN 437; AGA Report No. 8 Gulf Coast test gas; two nominal ones)', () => {
    expect([G20, G25, G23, G222, G24, G30, G31].map(({ name, molePct }) => [name, molePct])).toEqual([
      ['G20', { methane: 100 }],
      ['G25', { methane: 86, nitrogen: 14 }],
      ['G23', { methane: 92.5, nitrogen: 7.5 }],
      ['G222', { methane: 77, hydrogen: 23 }],
      ['G24', { methane: 68, propane: 12, hydrogen: 20 }],
      ['G30', { nButane: 50, iButane: 50 }],
      ['G31', { propane: 100 }],
    ]);
    expect(NG_US.molePct).toEqual({
      methane: 96.5222,
      ethane: 1.8186,
      propane: 0.4596,
      iButane: 0.0977,
      nButane: 0.1007,
      iPentane: 0.0473,
      nPentane: 0.0324,
      nHexane: 0.0664,
      nitrogen: 0.2595,
      carbonDioxide: 0.5956,
    });
    expect(HD_5.molePct).toEqual({ propane: 95, ethane: 2, propylene: 2, nButane: 1 });
    expect(OIL_2.massPct).toEqual({ carbon: 87, hydrogen: 12.8, sulphur: 0.2, nitrogen: 0, oxygen: 0 });
    expect(OIL_2.hhv25CKj).toBe(45_400);
  });

  it('are what a site is taken to burn until the supplier says otherwise', () => {
    expect(SITE_FUELS).toEqual({ 'natural-gas': NG_US, propane: HD_5, butane: G30, 'heating-oil': OIL_2 });
    expect(SITE_FUELS['natural-gas'].co2MaxDryVolPct).toBeGreaterThan(11.8);
    expect(SITE_FUELS['natural-gas'].co2MaxDryVolPct).toBeLessThan(11.9);
  });

  it('belong to the family whose published bands they are held against', () => {
    const families = [G20, G25, NG_US, G31, HD_5, G30, OIL_2].map(({ family }) => family);
    expect(families).toEqual([
      'natural-gas',
      'natural-gas',
      'natural-gas',
      'propane',
      'propane',
      'butane',
      'distillate-oil',
    ]);
  });
});
