/**
 * Flue loss by the short German rule (Siegert), as regulations there and in Flanders require it.
 *
 * Formula  qA = (tA − tL)·(A/(21 − O2) + B), or (tA − tL)·(A1/CO2 + B) with A1 = A·CO2max/21
 * Units    % of the LOWER heating value; °C; dry volume %
 * Valid    non-condensing only: flue 60 °C (above the dew point of every fuel here) to 500 °C and not colder than the
 *          air; air −40…60 °C; O2 0–12 %; CO2 3–20 %
 * Errors   sensible heat only: no CO loss, no condensation, no casing loss. Within 0.15 point of exact enthalpies on
 *          natural gas, 0.3 on LPG
 * Source   1. BImSchV (2010) Annex 2 no. 3; Flanders prints A 0.65 for natural gas
 * Checked  tests/checks/combustion/siegert.test.ts
 */
import type { Celsius, DryVolPct, Percent } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { O2_IN_AIR_GERMAN_VOL_PCT } from './combustionConstants.ts';

export type SiegertConstants = { readonly a: number; readonly b: number };

export const SIEGERT_CONSTANTS = {
  'light-heating-oil': { a: 0.68, b: 0.007 },
  'public-network-gas': { a: 0.66, b: 0.009 },
  'public-network-gas-flanders': { a: 0.65, b: 0.009 },
  'coke-oven-gas': { a: 0.6, b: 0.011 },
  lpg: { a: 0.63, b: 0.008 },
} as const satisfies Record<string, SiegertConstants>;

type Temperatures = { readonly flueGasC: Celsius; readonly airC: Celsius };

export function flueLossFromO2(
  input: Temperatures & { readonly constants: SiegertConstants; readonly o2DryVolPct: DryVolPct },
): Result<Percent, OutOfRange> {
  const outside = checkTemperatures(input) ?? checkRange('o2DryVolPct', input.o2DryVolPct, 0, 12);
  if (outside) return err(outside);
  const { a, b } = input.constants;
  return ok((input.flueGasC - input.airC) * (a / (O2_IN_AIR_GERMAN_VOL_PCT - input.o2DryVolPct) + b));
}

export function flueLossFromCo2(
  input: Temperatures & {
    readonly constants: SiegertConstants;
    readonly co2DryVolPct: DryVolPct;
    readonly co2MaxDryVolPct: DryVolPct;
  },
): Result<Percent, OutOfRange> {
  const outside = checkTemperatures(input) ?? checkRange('co2DryVolPct', input.co2DryVolPct, 3, 20);
  if (outside) return err(outside);
  const a1 = siegertA1(input);
  return a1.ok ? ok((input.flueGasC - input.airC) * (a1.value / input.co2DryVolPct + input.constants.b)) : a1;
}

/** The constant of the CO2 form. */
export function siegertA1(input: {
  readonly constants: SiegertConstants;
  readonly co2MaxDryVolPct: DryVolPct;
}): Result<number, OutOfRange> {
  const outside = checkRange('co2MaxDryVolPct', input.co2MaxDryVolPct, 5, 21);
  return outside ? err(outside) : ok((input.constants.a * input.co2MaxDryVolPct) / O2_IN_AIR_GERMAN_VOL_PCT);
}

function checkTemperatures(input: Temperatures): OutOfRange | null {
  return (
    checkRange('airC', input.airC, -40, 60) ?? checkRange('flueGasC', input.flueGasC, Math.max(60, input.airC), 500)
  );
}
