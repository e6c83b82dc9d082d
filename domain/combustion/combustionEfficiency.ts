/**
 * Flue-side efficiency from O2 and flue temperature, condensing or not: one formula that passes smoothly through the
 * dew point.
 *
 * Formula  ys = psat(tA)/p; vapour left = min(water, dry flue·ys/(1 − ys)); f = (water − vapour left)/fuel water, at most 1;
 *          sensible = Σ n·(h(tA) − h(tL)); η net = 100·(LHV − sensible + f·fuel water·44.013)/LHV, at most HHV/LHV;
 *          η gross = η net·LHV/HHV
 * Units    %; temperatures in °C; site pressure in kPa absolute; heating values at 25 °C
 * Valid    O2 0.5–15 %; flue 20–600 °C and not colder than the air; air −40…60 °C; 50–110 kPa
 * Errors   assumes flue gas saturated at its temperature, which a real exchanger does not reach: below the dew point the
 *          result is an upper estimate and measured condensate is the only proof. Casing and standby losses are not in
 *          it; residual heat of the condensate (< 0.2 point) neglected
 * Source   mass and energy balance; agrees with the US DOE stack-loss table within 0.7 point
 * Checked  tests/checks/combustion/efficiency.test.ts, condensing.test.ts, siegert.test.ts
 */
import { saturationPressureMpaAbs } from '../hydronics/waterSaturation.ts';
import { celsiusToKelvin } from '../quantity/conversions.ts';
import type { Celsius, DryVolPct, KpaAbs, Percent } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { lambdaFromO2 } from './airRatio.ts';
import { type CombustionProducts, combustionProducts } from './combustionProducts.ts';
import { gasDewPointC } from './dewPoint.ts';
import type { Fuel } from './fuel.ts';
import { LATENT_HEAT_OF_WATER_KJ_PER_MOL } from './gasComponents.ts';
import { enthalpyDifferenceKjPerMol, type FlueGasComponent } from './gasEnthalpy.ts';
import { airVapourMolPerMol } from './humidAir.ts';

export type CombustionEfficiency = {
  /** Share of the fuel's own water that has condensed, 0–1. */
  readonly condensedFraction: number;
  /** On the lower heating value. */
  readonly sensibleLossPctNet: Percent;
  readonly efficiencyNetPct: Percent;
  readonly efficiencyGrossPct: Percent;
  readonly dewPointC: Celsius;
};

export function combustionEfficiency(input: {
  readonly fuel: Fuel;
  readonly o2DryVolPct: DryVolPct;
  readonly flueGasC: Celsius;
  readonly airC: Celsius;
  /** 0 for dry air: a first estimate that errs low near and below the dew point. */
  readonly airRelativeHumidityPct: Percent;
  readonly pressureKpaAbs: KpaAbs;
}): Result<CombustionEfficiency, OutOfRange> {
  const { fuel, pressureKpaAbs } = input;
  const outside =
    checkRange('airC', input.airC, -40, 60) ??
    checkRange('flueGasC', input.flueGasC, Math.max(20, input.airC), 600) ??
    checkRange('airRelativeHumidityPct', input.airRelativeHumidityPct, 0, 100);
  if (outside) return err(outside);
  const lambda = lambdaFromO2(input);
  if (!lambda.ok) return lambda;
  const airVapour = airVapourMolPerMol({
    airC: input.airC,
    relativeHumidityPct: input.airRelativeHumidityPct,
    pressureKpaAbs,
  });
  if (!airVapour.ok) return airVapour;
  const products = combustionProducts({ fuel, lambda: lambda.value, airVapourMolPerMol: airVapour.value });
  if (!products.ok) return products;
  const { waterMol, dryMol } = products.value;
  const dewPoint = gasDewPointC({ waterVapourMolFraction: waterMol / (waterMol + dryMol), pressureKpaAbs });
  if (!dewPoint.ok) return dewPoint;
  const vapourMol = Math.min(waterMol, vapourCapacityMol(dryMol, input.flueGasC, pressureKpaAbs));
  const sensibleKj = sensibleHeatKj(products.value, vapourMol, input.airC, input.flueGasC);
  if (!sensibleKj.ok) return sensibleKj;

  // The air's own moisture condenses as well, but it never was heat of the fuel: it may not lift the result past HHV/LHV.
  const condensedFraction = Math.min(1, (waterMol - vapourMol) / fuel.waterMol);
  const latentKj = condensedFraction * fuel.waterMol * LATENT_HEAT_OF_WATER_KJ_PER_MOL['25 °C'];
  const efficiencyNetPct = (100 * Math.min(fuel.hhv25CKj, fuel.lhv25CKj - sensibleKj.value + latentKj)) / fuel.lhv25CKj;
  return ok({
    condensedFraction,
    sensibleLossPctNet: (100 * sensibleKj.value) / fuel.lhv25CKj,
    efficiencyNetPct,
    efficiencyGrossPct: (efficiencyNetPct * fuel.lhv25CKj) / fuel.hhv25CKj,
    dewPointC: dewPoint.value,
  });
}

/** Moles of vapour the dry flue gas can carry when saturated; no limit from boiling point and critical point upwards. */
function vapourCapacityMol(dryMol: number, flueGasC: Celsius, pressureKpaAbs: KpaAbs): number {
  const saturation = saturationPressureMpaAbs(celsiusToKelvin(flueGasC));
  const saturatedFraction = saturation.ok ? (saturation.value * 1000) / pressureKpaAbs : Number.POSITIVE_INFINITY;
  return saturatedFraction >= 1 ? Number.POSITIVE_INFINITY : (dryMol * saturatedFraction) / (1 - saturatedFraction);
}

/** SO2 is a trace and counted with the CO2. */
function sensibleHeatKj(
  products: CombustionProducts,
  vapourMol: number,
  fromC: Celsius,
  toC: Celsius,
): Result<number, OutOfRange> {
  const amounts: ReadonlyArray<readonly [FlueGasComponent, number]> = [
    ['co2', products.co2Mol + products.so2Mol],
    ['o2', products.o2Mol],
    ['n2', products.n2Mol],
    ['water', vapourMol],
  ];
  let totalKj = 0;
  for (const [component, mol] of amounts) {
    const difference = enthalpyDifferenceKjPerMol({ component, fromC, toC });
    if (!difference.ok) return difference;
    totalKj += mol * difference.value;
  }
  return ok(totalKj);
}
