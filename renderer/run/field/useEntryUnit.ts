/** The unit a box is typed in: that of what is stored, else the one last used on this laptop, else the person's own system. */
import { useState } from 'react';
import { type EntryUnit, entryUnits } from '../../../domain/quantity/entryUnits.ts';
import { preferredUnit, type UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';

export type EntryUnitChoice = {
  readonly unit: EntryUnit;
  readonly units: readonly EntryUnit[];
  /** Takes the next one in the list. */
  readonly switchUnit: () => void;
};

export function useEntryUnit(
  quantity: QuantityKey,
  unitSystem: UnitSystem,
  storedUnit: string | null,
): EntryUnitChoice {
  const units = entryUnits(quantity);
  const [chosen, choose] = useState<{ readonly symbol: string; readonly whileStored: string | null } | null>(null);
  const symbol =
    // A choice holds until something else is stored.
    (chosen?.whileStored === storedUnit ? chosen.symbol : storedUnit) ??
    chosen?.symbol ??
    localStorage.getItem(memoryKey(quantity));
  const unit = units.find((one) => one.symbol === symbol) ?? preferredUnit(quantity, unitSystem);
  const switchUnit = () => {
    const next = units[(units.indexOf(unit) + 1) % units.length] ?? unit;
    localStorage.setItem(memoryKey(quantity), next.symbol);
    choose({ symbol: next.symbol, whileStored: storedUnit });
  };
  return { unit, units, switchUnit };
}

function memoryKey(quantity: QuantityKey): string {
  return `lightoff.unit.${quantity}`;
}
