/** A worked-out number as the person reads it: `24.1 ± 0.4 kW`, or the same in Btu/h; how far it may be off stands with it. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import { lowerBoundMark, resultUnit } from '../../../domain/judgement/resultUnit.ts';
import { type EntryUnit, entryUnits } from '../../../domain/quantity/entryUnits.ts';
import { preferredUnit, type UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { QUANTITY_KEYS } from '../../../domain/quantity/quantities.ts';
import { figures, figuresWithSpread } from './figures.ts';

type Result = NonNullable<Finding['basis']['result']>;

export function resultText({ value, unit, plusMinus }: Result, unitSystem: UnitSystem): string {
  const shown = readIn(unit, unitSystem) ?? { symbol: unit, fromOwn: (own: number) => own };
  const number = shown.fromOwn(value);
  // A spread has no zero point of its own: 5 K either way is 9 °F, not 41.
  const text =
    plusMinus === null ? figures(number) : figuresWithSpread(number, shown.fromOwn(plusMinus) - shown.fromOwn(0));
  return shown.symbol === '' ? text : `${text} ${shown.symbol}`;
}

/** What a finding worked out; empty where it worked out nothing. */
export function workedOutText({ subject, basis }: Pick<Finding, 'subject' | 'basis'>, unitSystem: UnitSystem): string {
  const { result, inputs } = basis;
  if (result === undefined) return '';
  const unit = resultUnit(subject, result.unit);
  return `${lowerBoundMark(inputs)}${resultText({ ...result, unit }, unitSystem)}`;
}

/** The unit a person of this system reads what is kept in `ownSymbol` in; null: nothing that can be read has such a unit. */
function readIn(ownSymbol: string, unitSystem: UnitSystem): EntryUnit | null {
  if (ownSymbol === '') return null;
  const key = QUANTITY_KEYS.find((one) => entryUnits(one)[0].symbol === ownSymbol);
  return key === undefined ? null : preferredUnit(key, unitSystem);
}
