/** Where one answer turns into another, and the small terms that no published value can tell from nothing. */
import { describe, expect, it } from 'vitest';
import { lambdaFromO2 } from '../../../domain/combustion/airRatio.ts';
import { combustionEfficiency } from '../../../domain/combustion/combustionEfficiency.ts';
import { combustionProducts } from '../../../domain/combustion/combustionProducts.ts';
import { condensateKgPerKwh, condensateLPerH } from '../../../domain/combustion/condensate.ts';
import { foPlausibility } from '../../../domain/combustion/foPlausibility.ts';
import { G20 } from '../../../domain/combustion/fuels.ts';
import { enthalpyDifferenceKjPerMol } from '../../../domain/combustion/gasEnthalpy.ts';
import { gasFuel } from '../../../domain/combustion/gasFuel.ts';
import { oilFuel } from '../../../domain/combustion/oilFuel.ts';
import { unwrap } from '../../../domain/result.ts';

const burn = (massPct: Parameters<typeof oilFuel>[0]['massPct']) =>
  oilFuel({ name: 'test oil', family: 'distillate-oil', massPct, hhvMjPerKg: 40 });

describe('fuels at the edge of burning', () => {
  it('should refuse an oil without carbon: it has no CO2 to read', () => {
    expect(burn({ carbon: 0, hydrogen: 100, sulphur: 0, oxygen: 0, nitrogen: 0 })).toEqual({
      ok: false,
      error: { code: 'composition-does-not-burn' },
    });
  });

  it.each([
    ['a little methane in carbon dioxide', { methane: 0.3, carbonDioxide: 99.7 }],
    ['a little methane in hydrogen', { methane: 0.5, hydrogen: 99.5 }],
  ])('should take %s: it burns and has CO2', (_what, molePct) => {
    expect(gasFuel({ name: 'lean', family: 'natural-gas', molePct }).ok).toBe(true);
  });
});

describe('combustionEfficiency', () => {
  it('should count the heat of every flue gas, SO2 with the CO2', () => {
    const fuel = unwrap(burn({ carbon: 83, hydrogen: 11, sulphur: 6, oxygen: 0, nitrogen: 0 }));
    const state = { o2DryVolPct: 4, airC: 20, flueGasC: 220, airRelativeHumidityPct: 0, pressureKpaAbs: 101.325 };
    const lambda = unwrap(lambdaFromO2({ fuel, o2DryVolPct: state.o2DryVolPct }));
    const products = unwrap(combustionProducts({ fuel, lambda, airVapourMolPerMol: 0 }));
    const heat = (component: Parameters<typeof enthalpyDifferenceKjPerMol>[0]['component']) =>
      unwrap(enthalpyDifferenceKjPerMol({ component, fromC: state.airC, toC: state.flueGasC }));
    const byHandKj =
      (products.co2Mol + products.so2Mol) * heat('co2') +
      products.o2Mol * heat('o2') +
      products.n2Mol * heat('n2') +
      products.waterMol * heat('water');
    const { sensibleLossPctNet } = unwrap(combustionEfficiency({ fuel, ...state }));
    expect((sensibleLossPctNet * fuel.lhv25CKj) / 100).toBeCloseTo(byHandKj, 9);
  });
});

describe('condensateLPerH', () => {
  it('should hold 0.998 kg in a litre (water at 20 °C: 998.2 kg/m³, IAPWS-95)', () => {
    const litres = unwrap(condensateLPerH({ fuel: G20, inputKwGross: 24, condensedFraction: 1 }));
    const kg = 24 * unwrap(condensateKgPerKwh({ fuel: G20, basis: 'gross', condensedFraction: 1 }));
    expect(kg / litres).toBeCloseTo(0.9982, 3);
  });
});

describe('foPlausibility', () => {
  it('should count the lowest Fo of the band (1.600 for natural gas, US EPA Method 3B) as inside it', () => {
    const { fo, isInsideEpaBand } = unwrap(
      foPlausibility({ fuel: G20, o2DryVolPct: 0.9, co2DryVolPct: 12.5, coPpmDry: 0 }),
    );
    expect(fo).toBe(1.6);
    expect(isInsideEpaBand).toBe(true);
  });
});
