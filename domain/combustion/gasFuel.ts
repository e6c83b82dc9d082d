/**
 * A gaseous fuel from its analysis in mole %.
 *
 * Formula  sums over components × mole fraction; LHV = HHV − water·latent heat, at the same temperature
 * Valid    shares of 0–100 % that add up to 100 ± 0.1 %; a mixture that burns
 * Source   ISO 6976:2016 clauses 6 and 7; stoichiometry by mass balance
 * Checked  tests/checks/combustion/stoichiometry.test.ts, heatingValue.test.ts
 */
import { err, ok, type Result } from '../result.ts';
import { compositionFractions } from './composition.ts';
import type { CompositionError, FuelFamily, GasComposition, GasFuel } from './fuel.ts';
import { GAS_COMPONENTS, type GasComponent, LATENT_HEAT_OF_WATER_KJ_PER_MOL } from './gasComponents.ts';
import type { CombustionTemperature } from './referenceState.ts';
import { stoichiometry } from './stoichiometry.ts';

export function gasFuel(input: {
  readonly name: string;
  readonly family: FuelFamily;
  readonly molePct: GasComposition;
}): Result<GasFuel, CompositionError> {
  const fractions = compositionFractions(input.molePct);
  if (!fractions.ok) return fractions;

  const sum = (property: (component: GasComponent) => number) =>
    fractions.value.reduce((total, [key, fraction]) => total + fraction * property(GAS_COMPONENTS[key]), 0);

  const products = stoichiometry({
    c: sum((one) => one.atoms.c),
    h: sum((one) => one.atoms.h),
    s: 0,
    o: sum((one) => one.atoms.o),
    n: sum((one) => one.atoms.n),
  });
  const hhvAt = (temperature: CombustionTemperature) => sum((one) => one.hhvKjPerMol[temperature]);
  const lhvAt = (temperature: CombustionTemperature) =>
    hhvAt(temperature) - products.waterMol * LATENT_HEAT_OF_WATER_KJ_PER_MOL[temperature];
  // Pure hydrogen burns but has no CO2 to read: every formula here that divides by CO2max would lose its footing.
  if (!(products.theoreticalO2Mol > 0 && products.co2Mol > 0 && lhvAt('25 °C') > 0)) {
    return err({ code: 'composition-does-not-burn' });
  }
  return ok({
    kind: 'gas',
    name: input.name,
    family: input.family,
    molePct: input.molePct,
    massGPerAmount: sum((one) => one.molarMassGPerMol),
    ...products,
    hhvKjPerMol: { '15 °C': hhvAt('15 °C'), '60 °F': hhvAt('60 °F'), '25 °C': hhvAt('25 °C') },
    lhvKjPerMol: { '15 °C': lhvAt('15 °C'), '60 °F': lhvAt('60 °F'), '25 °C': lhvAt('25 °C') },
    hhv25CKj: hhvAt('25 °C'),
    lhv25CKj: lhvAt('25 °C'),
    summationFactor: {
      '15 °C': sum((one) => one.summationFactor['15 °C']),
      '60 °F': sum((one) => one.summationFactor['60 °F']),
    },
    suppliedRelativeDensity: null,
  });
}
