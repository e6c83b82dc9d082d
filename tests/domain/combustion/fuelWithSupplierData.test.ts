import { describe, expect, it } from 'vitest';
import { netToGrossRatio } from '../../../domain/combustion/efficiencyBasis.ts';
import { G20, NG_US, OIL_2 } from '../../../domain/combustion/fuels.ts';
import { gasFuelWithSupplierData, oilFuelWithSupplierData } from '../../../domain/combustion/fuelWithSupplierData.ts';
import { gasProperties } from '../../../domain/combustion/gasProperties.ts';
import { co2FromO2 } from '../../../domain/combustion/o2Co2.ts';
import { EN_437_STATE, US_14_73_PSIA_STATE } from '../../../domain/combustion/referenceState.ts';
import { unwrap } from '../../../domain/result.ts';

describe("a supplier's figures over a typical fuel", () => {
  it('replace the heating value at the state it was given for, and leave the share of latent heat', () => {
    const fuel = unwrap(
      gasFuelWithSupplierData(NG_US, { heatingValue: { hhvMjPerM3: 40, state: US_14_73_PSIA_STATE } }),
    );
    const at = (state: typeof EN_437_STATE) => unwrap(gasProperties({ fuel, state }));
    expect(at(US_14_73_PSIA_STATE).hhvMjPerM3).toBeCloseTo(40, 9);
    expect(netToGrossRatio(fuel)).toBeCloseTo(netToGrossRatio(NG_US), 12);
    const scale = 40 / unwrap(gasProperties({ fuel: NG_US, state: US_14_73_PSIA_STATE })).hhvMjPerM3;
    const typical = unwrap(gasProperties({ fuel: NG_US, state: EN_437_STATE }));
    expect(at(EN_437_STATE).hhvMjPerM3).toBeCloseTo(typical.hhvMjPerM3 * scale, 9);
    expect(at(EN_437_STATE).lhvMjPerM3).toBeCloseTo(typical.lhvMjPerM3 * scale, 9);
    expect(fuel.hhvKjPerMol['25 °C']).toBeCloseTo(fuel.hhv25CKj, 9);
  });

  it('replace CO2max wherever CO2 is read, and nothing else of the stoichiometry', () => {
    const fuel = unwrap(gasFuelWithSupplierData(G20, { co2MaxDryVolPct: 12 }));
    expect(unwrap(co2FromO2({ fuel, o2DryVolPct: 0 }))).toBe(12);
    expect(fuel.dryFlueToAirRatio).toBe(G20.dryFlueToAirRatio);
  });

  it('replace the relative density in the Wobbe index', () => {
    const fuel = unwrap(gasFuelWithSupplierData(G20, { relativeDensity: 0.64 }));
    const { wobbeGrossMjPerM3, hhvMjPerM3 } = unwrap(gasProperties({ fuel, state: EN_437_STATE }));
    expect(wobbeGrossMjPerM3).toBeCloseTo(hhvMjPerM3 / 0.8, 12);
  });

  it('leave the fuel as it was where nothing is given', () => {
    expect(unwrap(gasFuelWithSupplierData(G20, {}))).toEqual(G20);
    expect(unwrap(oilFuelWithSupplierData(OIL_2, {}))).toEqual(OIL_2);
  });

  it('replace the heating value of an oil', () => {
    const fuel = unwrap(oilFuelWithSupplierData(OIL_2, { hhvMjPerKg: 44.5, co2MaxDryVolPct: 15.4 }));
    expect(fuel.hhv25CKj).toBeCloseTo(44_500, 9);
    expect(netToGrossRatio(fuel)).toBeCloseTo(netToGrossRatio(OIL_2), 12);
    expect(fuel.co2MaxDryVolPct).toBe(15.4);
  });

  it('are refused when they look like another unit: Btu/ft³ typed as MJ/m³', () => {
    expect(
      gasFuelWithSupplierData(NG_US, { heatingValue: { hhvMjPerM3: 1036, state: US_14_73_PSIA_STATE } }),
    ).toMatchObject({ ok: false, error: { code: 'out-of-range', quantity: 'hhvMjPerM3' } });
  });
});
