/**
 * A heating oil from its ultimate analysis in mass % and its higher heating value.
 *
 * Formula  kmol O2 per kg = c/12.011 + h/4.032 + s/32.06 − o/31.998; LHV = HHV − water·44.013 kJ/mol
 * Valid    shares of 0–100 % that add up to 100 ± 0.1 %; HHV 30–55 MJ/kg (liquid hydrocarbons)
 * Source   mass balance; CO2max leaves the SO2 out, as flue analysers do
 * Checked  tests/checks/combustion/stoichiometry.test.ts, heatingValue.test.ts
 */
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import {
  MOLAR_MASS_CARBON_G_PER_MOL,
  MOLAR_MASS_H2_G_PER_MOL,
  MOLAR_MASS_N2_G_PER_MOL,
  MOLAR_MASS_O2_G_PER_MOL,
  MOLAR_MASS_SULPHUR_G_PER_MOL,
} from './combustionConstants.ts';
import { compositionFractions } from './composition.ts';
import type { CompositionError, FuelFamily, OilComposition, OilFuel } from './fuel.ts';
import { LATENT_HEAT_OF_WATER_KJ_PER_MOL } from './gasComponents.ts';
import { stoichiometry } from './stoichiometry.ts';

export function oilFuel(input: {
  readonly name: string;
  readonly family: FuelFamily;
  readonly massPct: OilComposition;
  readonly hhvMjPerKg: number;
}): Result<OilFuel, CompositionError | OutOfRange> {
  const outside = checkRange('hhvMjPerKg', input.hhvMjPerKg, 30, 55);
  if (outside) return err(outside);
  const fractions = compositionFractions(input.massPct);
  if (!fractions.ok) return fractions;

  const gPerKg = Object.fromEntries(fractions.value.map(([key, fraction]) => [key, fraction * 1000])) as OilComposition;
  const products = stoichiometry({
    c: gPerKg.carbon / MOLAR_MASS_CARBON_G_PER_MOL,
    h: (2 * gPerKg.hydrogen) / MOLAR_MASS_H2_G_PER_MOL,
    s: gPerKg.sulphur / MOLAR_MASS_SULPHUR_G_PER_MOL,
    o: (2 * gPerKg.oxygen) / MOLAR_MASS_O2_G_PER_MOL,
    n: (2 * gPerKg.nitrogen) / MOLAR_MASS_N2_G_PER_MOL,
  });
  if (!(products.theoreticalO2Mol > 0 && products.co2Mol > 0)) return err({ code: 'composition-does-not-burn' });

  const hhv25CKj = input.hhvMjPerKg * 1000;
  return ok({
    kind: 'oil',
    name: input.name,
    family: input.family,
    massPct: input.massPct,
    massGPerAmount: 1000,
    ...products,
    hhv25CKj,
    lhv25CKj: hhv25CKj - products.waterMol * LATENT_HEAT_OF_WATER_KJ_PER_MOL['25 °C'],
  });
}
