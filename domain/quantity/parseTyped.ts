/**
 * What somebody typed into a reading's box, as a number in the quantity's own unit, or a clear refusal that says what to
 * ask. Decimal commas, thin spaces, unicode minus signs, `>4000` and any unit of the quantity are understood; nothing is
 * ever guessed: where a text has two meanings and physics does not rule one out, the answer is `ambiguous`.
 */
import { err, ok, type Result } from '../result.ts';
import { type AmountKind, amountKindOf } from './amountKind.ts';
import type { EntryUnit } from './entryUnits.ts';
import type { Dimension, QuantityKey } from './quantities.ts';
import { readNumberText } from './readNumberText.ts';
import { findUnitIn, matchUnit } from './unitText.ts';

export type TypedValue = {
  /** Exactly as typed; this is what is kept beside the value. */
  readonly typedText: string;
  /** Symbol of the unit it was typed in. */
  readonly unit: string;
  readonly valueTyped: number;
  /** In the quantity's own unit. */
  readonly valueOwn: number;
  /** `>`: the truth is at least this. */
  readonly comparator: '=' | '>' | '<';
};

export type TypedMeaning = { readonly valueTyped: number; readonly unit: string; readonly valueOwn: number };

export type TypedProblem =
  | { readonly code: 'empty' }
  | { readonly code: 'not-a-number'; readonly typedText: string }
  | { readonly code: 'unknown-unit'; readonly unitText: string; readonly accepted: readonly string[] }
  | {
      readonly code: 'unit-of-another-kind';
      readonly unitText: string;
      readonly kinds: readonly (Dimension | 'absolute-pressure')[];
      readonly accepted: readonly string[];
    }
  | { readonly code: 'ambiguous'; readonly typedText: string; readonly meanings: readonly TypedMeaning[] }
  | {
      readonly code: 'beyond-possible';
      readonly valueTyped: number;
      readonly unit: string;
      readonly valueOwn: number;
      /** The quantity's possible range, in its own unit. */
      readonly possible: readonly [min: number, max: number];
      /** The same range in the unit that was typed. */
      readonly possibleTyped: readonly [min: number, max: number];
      /** Other units of the quantity in which the same number would be possible. */
      readonly wouldFitIn: readonly string[];
      /** A tenth of the number would be possible: a decimal point may be missing. */
      readonly tenthWouldFit: boolean;
    };

export function parseTyped(key: QuantityKey, text: string, defaultUnit: string): Result<TypedValue, TypedProblem> {
  return parseAmount(amountKindOf(key), text, defaultUnit);
}

/** The same for a number that is no quantity of the catalogue: a pipe's length, an exponent. */
export function parseAmount(kind: AmountKind, text: string, defaultUnit: string): Result<TypedValue, TypedProblem> {
  if (text.trim() === '') return err({ code: 'empty' });
  const { units } = kind;
  const accepted = units.map((unit) => unit.symbol);
  const shownUnit = findUnitIn(units, defaultUnit);
  if (!shownUnit) return err({ code: 'unknown-unit', unitText: defaultUnit, accepted });
  const clock = readMinutesAndSeconds(units[0], text);
  const number = clock ?? readNumberText(text);
  if (number === null) return err({ code: 'not-a-number', typedText: text });

  const match = matchUnit(kind, number.rest, clock === null ? shownUnit : units[0]);
  switch (match.kind) {
    case 'unknown':
      return err({ code: 'unknown-unit', unitText: number.rest, accepted });
    case 'of-another-kind':
      return err({ code: 'unit-of-another-kind', unitText: number.rest, kinds: match.kinds, accepted });
    case 'ambiguous': {
      const meanings = match.meanings.flatMap((unit) => number.candidates.map((value) => meaningOf(value, unit)));
      return err({ code: 'ambiguous', typedText: text, meanings });
    }
    case 'unit':
      return valueInRange(kind, text, number, match.unit);
  }
}

function valueInRange(
  { units, possible: range }: AmountKind,
  typedText: string,
  number: NonNullable<ReturnType<typeof readNumberText>>,
  unit: EntryUnit,
): Result<TypedValue, TypedProblem> {
  const meanings = number.candidates.map((value) => meaningOf(value, unit));
  const possible = meanings.filter((meaning) => isPossible(range, meaning.valueOwn));
  const [only, another] = possible;
  if (only && another) return err({ code: 'ambiguous', typedText, meanings: possible });
  if (only) return ok({ typedText, ...only, comparator: number.comparator });
  const [valueTyped] = number.candidates;
  return err({
    code: 'beyond-possible',
    valueTyped,
    unit: unit.symbol,
    valueOwn: ownValue(unit, valueTyped),
    possible: range,
    possibleTyped: [tidy(unit.fromOwn(range[0])), tidy(unit.fromOwn(range[1]))],
    wouldFitIn: units
      .filter((other) => other.symbol !== unit.symbol && isPossible(range, ownValue(other, valueTyped)))
      .map((other) => other.symbol),
    tenthWouldFit: isPossible(range, ownValue(unit, valueTyped / 10)),
  });
}

/** A stopwatch shows `1:10`; only where the quantity is in seconds has that one meaning. */
function readMinutesAndSeconds(ownUnit: EntryUnit, text: string): ReturnType<typeof readNumberText> {
  if (ownUnit.symbol !== 's') return null;
  const shown = /^\s*(\d{1,2}):([0-5]\d(?:[.,]\d+)?)\s*$/.exec(text);
  if (!shown) return null;
  const seconds = Number(shown[1]) * 60 + Number(shown[2]?.replace(',', '.'));
  return { comparator: '=', candidates: [seconds], rest: '' };
}

function meaningOf(valueTyped: number, unit: EntryUnit): TypedMeaning {
  return { valueTyped, unit: unit.symbol, valueOwn: ownValue(unit, valueTyped) };
}

function ownValue(unit: EntryUnit, valueTyped: number): number {
  return tidy(unit.toOwn(valueTyped));
}

/** Conversion leaves dust in the sixteenth digit; a stored 37.000000000000004 would come back to haunt comparisons. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}

function isPossible([min, max]: AmountKind['possible'], valueOwn: number): boolean {
  return valueOwn >= min && valueOwn <= max;
}
