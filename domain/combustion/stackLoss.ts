/**
 * Stack loss by the short handbook form: dry gas and hydrogen moisture, on the HIGHER heating value.
 *
 * Formula  dry gas: m·cp·(tf − ta)/HHV; hydrogen: 8.936·H·(1089 − ta + 0.46·tf)/HHV with °F and Btu/lb; cp 0.24
 *          m = (fuel + air − water)/fuel
 * Units    % of HHV; m in mass of dry flue gas per mass of fuel
 * Valid    non-condensing: flue 60–600 °C and not colder than the air; air −40…60 °C; O2 0.5–15 %
 * Errors   about 0.1 point above exact enthalpies. Never add to a loss on the lower heating value
 * Source   ASME short form as handbooks print it (from memory); PTC 4 itself uses other fits
 * Checked  tests/checks/combustion/efficiency.test.ts
 */
import {
  celsiusToFahrenheit,
  KJ_PER_KG_K_PER_BTU_PER_LB_F,
  KJ_PER_KG_PER_BTU_PER_LB,
} from '../quantity/conversions.ts';
import type { Celsius, DryVolPct, KelvinDifference, Percent } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { lambdaFromO2 } from './airRatio.ts';
import {
  MOLAR_MASS_DRY_AIR_G_PER_MOL,
  MOLAR_MASS_H2_G_PER_MOL,
  MOLAR_MASS_WATER_G_PER_MOL,
} from './combustionConstants.ts';
import type { Fuel } from './fuel.ts';

const DRY_GAS_CP_BTU_PER_LB_F = 0.24;
/** Pounds of water formed per pound of hydrogen. */
const WATER_PER_HYDROGEN = 8.936;

export type StackLoss = {
  readonly dryGasLossPctGross: Percent;
  readonly hydrogenMoistureLossPctGross: Percent;
  readonly efficiencyGrossPct: Percent;
};

export function stackLossShortForm(input: {
  readonly fuel: Fuel;
  readonly o2DryVolPct: DryVolPct;
  readonly flueGasC: Celsius;
  readonly airC: Celsius;
}): Result<StackLoss, OutOfRange> {
  const { fuel, airC, flueGasC } = input;
  const outside = checkRange('airC', airC, -40, 60) ?? checkRange('flueGasC', flueGasC, Math.max(60, airC), 600);
  if (outside) return err(outside);
  const lambda = lambdaFromO2(input);
  if (!lambda.ok) return lambda;

  // By mass balance, which counts the argon of the air with its own weight.
  const dryGasG =
    fuel.massGPerAmount +
    lambda.value * fuel.theoreticalAirMol * MOLAR_MASS_DRY_AIR_G_PER_MOL -
    fuel.waterMol * MOLAR_MASS_WATER_G_PER_MOL;
  const hhvKjPerKg = (fuel.hhv25CKj / fuel.massGPerAmount) * 1000;
  const dryGas = dryGasLoss({
    dryGasKgPerKgFuel: dryGasG / fuel.massGPerAmount,
    cpKjPerKgK: DRY_GAS_CP_BTU_PER_LB_F * KJ_PER_KG_K_PER_BTU_PER_LB_F,
    riseK: flueGasC - airC,
    hhvKjPerKg,
  });
  if (!dryGas.ok) return dryGas;
  const hydrogenFraction = (fuel.waterMol * MOLAR_MASS_H2_G_PER_MOL) / fuel.massGPerAmount;
  const moistureBtuPerLbWater = 1089 - celsiusToFahrenheit(airC) + 0.46 * celsiusToFahrenheit(flueGasC);
  const hydrogenMoistureLossPctGross =
    (100 * WATER_PER_HYDROGEN * hydrogenFraction * moistureBtuPerLbWater) / (hhvKjPerKg / KJ_PER_KG_PER_BTU_PER_LB);
  return ok({
    dryGasLossPctGross: dryGas.value,
    hydrogenMoistureLossPctGross,
    efficiencyGrossPct: 100 - dryGas.value - hydrogenMoistureLossPctGross,
  });
}

/** The dry-gas part alone, for a fuel known only by its air demand and heating value. */
export function dryGasLoss(input: {
  readonly dryGasKgPerKgFuel: number;
  readonly cpKjPerKgK: number;
  readonly riseK: KelvinDifference;
  readonly hhvKjPerKg: number;
}): Result<Percent, OutOfRange> {
  const outside =
    checkRange('dryGasKgPerKgFuel', input.dryGasKgPerKgFuel, 0, 100) ??
    checkRange('cpKjPerKgK', input.cpKjPerKgK, 0.8, 1.3) ??
    checkRange('riseK', input.riseK, 0, 640) ??
    checkRange('hhvKjPerKg', input.hhvKjPerKg, 5000, 150_000);
  if (outside) return err(outside);
  return ok((100 * input.dryGasKgPerKgFuel * input.cpKjPerKgK * input.riseK) / input.hhvKjPerKg);
}
