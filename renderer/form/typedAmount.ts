/** A number with its unit as a form holds it: the text as typed and the unit chosen beside it. Reads and writes any dimension. */
import { ENTRY_UNITS, type EntryUnit } from '../../domain/quantity/entryUnits.ts';
import { formatNumber } from '../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import type { Dimension } from '../../domain/quantity/quantities.ts';
import { readNumberText } from '../../domain/quantity/readNumberText.ts';
import { err, ok, type Result } from '../../domain/result.ts';

export type TypedAmount = {
  readonly text: string;
  readonly unit: string;
  /** What is on file, while nobody has typed: opening and saving a form must not round a stored value. */
  readonly storedOwn?: number;
};

export type AmountProblem =
  | { readonly code: 'not-a-number' }
  | { readonly code: 'ambiguous'; readonly meanings: readonly number[] }
  | { readonly code: 'unknown-unit'; readonly unit: string };

/** The units offered beside the box, the reader's own first. */
export function amountUnits(dimension: Dimension): readonly string[] {
  return ENTRY_UNITS[dimension].map((unit) => unit.symbol);
}

/** Null when nothing was typed: missing is not zero. */
export function readAmount(
  dimension: Dimension,
  { text, unit, storedOwn }: TypedAmount,
): Result<number | null, AmountProblem> {
  if (storedOwn !== undefined) return ok(storedOwn);
  if (text.trim() === '') return ok(null);
  const number = readNumberText(text);
  if (number === null || number.comparator !== '=') return err({ code: 'not-a-number' });
  // A unit typed behind the number wins over the one chosen beside it.
  const entryUnit = findUnit(dimension, number.rest === '' ? unit : number.rest);
  if (entryUnit === undefined) return err({ code: 'unknown-unit', unit: number.rest });
  const [first, ...others] = number.candidates;
  if (others.length > 0) return err({ code: 'ambiguous', meanings: number.candidates });
  return ok(Number(entryUnit.toOwn(first).toPrecision(12)));
}

/** A stored value as the form shows it for editing; decimals in the own unit, carried over to the shown one. */
export function showAmount(dimension: Dimension, own: number | null, unit: string, ownDecimals: number): TypedAmount {
  const entryUnit = findUnit(dimension, unit) ?? ENTRY_UNITS[dimension][0];
  if (own === null) return { text: '', unit: entryUnit.symbol };
  const perOwn = entryUnit.fromOwn(1) - entryUnit.fromOwn(0);
  const decimals = Math.max(0, ownDecimals - Math.round(Math.log10(perOwn)));
  const text = formatNumber(entryUnit.fromOwn(own), decimals).replace('\u2212', '-').replaceAll('\u202f', '');
  return {
    text: text.includes('.') ? text.replace(/\.?0+$/, '') : text,
    unit: entryUnit.symbol,
    storedOwn: own,
  };
}

const US_UNIT: Partial<Record<Dimension, string>> = {
  temperature: '°F',
  'gas-pressure': 'in w.c.',
  'system-pressure': 'psi',
  power: 'MBH',
  length: 'ft',
  volume: 'US gal',
  'gas-volume': 'ft³',
  'heating-value': 'Btu/ft³',
};

/** The unit a form starts with; plates and meters in the US speak MBH and ft³. */
export function usualUnit(dimension: Dimension, unitSystem: UnitSystem): string {
  const own = ENTRY_UNITS[dimension][0].symbol;
  return unitSystem === 'us' ? (US_UNIT[dimension] ?? own) : own;
}

function findUnit(dimension: Dimension, text: string): EntryUnit | undefined {
  const wanted = text.trim().toLowerCase();
  return ENTRY_UNITS[dimension].find(
    (unit) => unit.symbol.toLowerCase() === wanted || unit.spellings.some((spelling) => spelling === wanted),
  );
}
