/**
 * A fuel with the supplier's own figures laid over the typical ones: CO2max, heating value, relative density.
 *
 * A supplied heating value scales HHV and LHV alike, so that the share of latent heat stays that of the composition.
 * Units    dry volume %; MJ/m³ or MJ/kg; relative density dimensionless
 * Valid    CO2max 5–21 %; heating value within half to double of the composition's (further off is another fuel or unit);
 *          relative density 0.3–3
 * Checked  tests/domain/combustion/fuelWithSupplierData.test.ts
 */
import type { DryVolPct } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import type { Fuel, GasFuel, OilFuel } from './fuel.ts';
import { gasProperties } from './gasProperties.ts';
import type { ReferenceState } from './referenceState.ts';

type SupplierData = {
  readonly co2MaxDryVolPct?: DryVolPct;
};
export type GasSupplierData = SupplierData & {
  readonly heatingValue?: { readonly hhvMjPerM3: number; readonly state: ReferenceState };
  readonly relativeDensity?: number;
};
export type OilSupplierData = SupplierData & { readonly hhvMjPerKg?: number };

export function gasFuelWithSupplierData(fuel: GasFuel, supplied: GasSupplierData): Result<GasFuel, OutOfRange> {
  const outside =
    checkCo2Max(supplied) ??
    (supplied.relativeDensity === undefined ? null : checkRange('relativeDensity', supplied.relativeDensity, 0.3, 3));
  if (outside) return err(outside);

  let scale = 1;
  if (supplied.heatingValue) {
    const typical = gasProperties({ fuel, state: supplied.heatingValue.state });
    if (!typical.ok) return typical;
    const { hhvMjPerM3 } = typical.value;
    const far = checkRange('hhvMjPerM3', supplied.heatingValue.hhvMjPerM3, hhvMjPerM3 / 2, hhvMjPerM3 * 2);
    if (far) return err(far);
    scale = supplied.heatingValue.hhvMjPerM3 / hhvMjPerM3;
  }
  return ok({
    ...withCommonData(fuel, supplied, scale),
    hhvKjPerMol: scaled(fuel.hhvKjPerMol, scale),
    lhvKjPerMol: scaled(fuel.lhvKjPerMol, scale),
    suppliedRelativeDensity: supplied.relativeDensity ?? fuel.suppliedRelativeDensity,
  });
}

export function oilFuelWithSupplierData(fuel: OilFuel, supplied: OilSupplierData): Result<OilFuel, OutOfRange> {
  const typicalMjPerKg = fuel.hhv25CKj / 1000;
  const suppliedMjPerKg = supplied.hhvMjPerKg ?? typicalMjPerKg;
  const outside =
    checkCo2Max(supplied) ?? checkRange('hhvMjPerKg', suppliedMjPerKg, typicalMjPerKg / 2, typicalMjPerKg * 2);
  if (outside) return err(outside);
  return ok(withCommonData(fuel, supplied, suppliedMjPerKg / typicalMjPerKg));
}

function checkCo2Max(supplied: SupplierData): OutOfRange | null {
  return supplied.co2MaxDryVolPct === undefined ? null : checkRange('co2MaxDryVolPct', supplied.co2MaxDryVolPct, 5, 21);
}

function withCommonData<F extends Fuel>(fuel: F, supplied: SupplierData, scale: number): F {
  return {
    ...fuel,
    co2MaxDryVolPct: supplied.co2MaxDryVolPct ?? fuel.co2MaxDryVolPct,
    hhv25CKj: fuel.hhv25CKj * scale,
    lhv25CKj: fuel.lhv25CKj * scale,
  };
}

function scaled(values: GasFuel['hhvKjPerMol'], scale: number): GasFuel['hhvKjPerMol'] {
  return { '15 °C': values['15 °C'] * scale, '60 °F': values['60 °F'] * scale, '25 °C': values['25 °C'] * scale };
}
