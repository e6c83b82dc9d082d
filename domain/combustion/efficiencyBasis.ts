/**
 * One efficiency on two bases: net counts the lower heating value, gross the higher.
 *
 * Formula  η gross = η net·LHV/HHV; fuel saving = 1 − η before/η after
 * Units    %; LHV/HHV at 25 °C: 0.901 natural gas, 0.921 LPG, 0.938 oil ("÷ 1.1" is only a field shortcut)
 * Valid    efficiencies 1–115 %
 * Source   definition of the two bases; LHV and HHV from the fuel's composition
 * Checked  tests/checks/combustion/efficiency.test.ts
 */
import type { Percent } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import type { Fuel } from './fuel.ts';

export function netToGrossRatio(fuel: Fuel): number {
  return fuel.lhv25CKj / fuel.hhv25CKj;
}

export function grossFromNetEfficiency(input: {
  readonly fuel: Fuel;
  readonly efficiencyNetPct: Percent;
}): Result<Percent, OutOfRange> {
  const outside = checkEfficiency('efficiencyNetPct', input.efficiencyNetPct);
  return outside ? err(outside) : ok(input.efficiencyNetPct * netToGrossRatio(input.fuel));
}

export function netFromGrossEfficiency(input: {
  readonly fuel: Fuel;
  readonly efficiencyGrossPct: Percent;
}): Result<Percent, OutOfRange> {
  const outside = checkEfficiency('efficiencyGrossPct', input.efficiencyGrossPct);
  return outside ? err(outside) : ok(input.efficiencyGrossPct / netToGrossRatio(input.fuel));
}

/** Both efficiencies on the same basis. Negative when the later one is worse. */
export function fuelSavingPct(input: {
  readonly efficiencyBeforePct: Percent;
  readonly efficiencyAfterPct: Percent;
}): Result<Percent, OutOfRange> {
  const outside =
    checkEfficiency('efficiencyBeforePct', input.efficiencyBeforePct) ??
    checkEfficiency('efficiencyAfterPct', input.efficiencyAfterPct);
  return outside ? err(outside) : ok(100 * (1 - input.efficiencyBeforePct / input.efficiencyAfterPct));
}

function checkEfficiency(quantity: string, efficiencyPct: Percent): OutOfRange | null {
  return checkRange(quantity, efficiencyPct, 1, 115);
}
