/** The inputs of a worksheet, as data. A field is named as the domain names the number, so that a refused one is found again. */
import { type AmountKind, amountKindOf } from '../../../domain/quantity/amountKind.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { type QuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';
import { type Measure, measureOf } from './measure.ts';
import type { Worked } from './worked.ts';

/** One for both unit systems, or one each. */
export type BySystem<T> = Readonly<Record<UnitSystem, T>>;

type Common = {
  readonly label: string;
  readonly help?: string;
  /** Asked only while another field is chosen so. */
  readonly onlyFor?: { readonly field: string; readonly is: readonly string[] };
};

export type NumberField = Common & {
  readonly kind: 'number';
  readonly measure: Measure;
  readonly possible: AmountKind['possible'];
  /** Stands in the box at the start where practice knows a usual figure: seen, and free to be changed. */
  readonly usual?: BySystem<string>;
  /** Other names the domain gives the same number. */
  readonly alsoCalled?: readonly string[];
  /** The reading of a run that is the same number; `points`: read at these only. */
  readonly reading?: { readonly quantity: QuantityKey; readonly points?: readonly (string | null)[] };
};

export type ChoiceField<K extends string = string> = Common & {
  readonly kind: 'choice';
  readonly options: Readonly<Record<K, string>>;
  readonly usual: BySystem<NoInfer<K>>;
  /** Filled from what is on file for a visit. */
  readonly onFile?: 'fuel' | 'practice';
};

export type Field = NumberField | ChoiceField;
export type Fields = Readonly<Record<string, Field>>;

export type Given<F extends Fields> = {
  readonly [K in keyof F]: F[K] extends ChoiceField<infer O> ? O : Worked<number>;
};

type Extra = Partial<Pick<NumberField, 'label' | 'help' | 'onlyFor' | 'alsoCalled' | 'possible'>> & {
  readonly usual?: BySystem<string> | string;
};

/** A number that is read on a job as well: units, label and possible values are those of the reading. */
export function reading(
  quantity: QuantityKey,
  { points, usual, ...extra }: Extra & { readonly points?: readonly (string | null)[] } = {},
): NumberField {
  return {
    kind: 'number',
    label: quantitySpec(quantity).label,
    measure: measureOf(quantity),
    possible: amountKindOf(quantity).possible,
    reading: points === undefined ? { quantity } : { quantity, points },
    ...usualOf(usual),
    ...extra,
  };
}

/** A number of the worksheet's own. */
export function number(
  label: string,
  measure: Measure,
  possible: AmountKind['possible'],
  { usual, ...extra }: Omit<Extra, 'label' | 'possible'> = {},
): NumberField {
  return { kind: 'number', label, measure, possible, ...usualOf(usual), ...extra };
}

export function choice<const K extends string>(
  label: string,
  options: Readonly<Record<K, string>>,
  usual: NoInfer<K> | BySystem<NoInfer<K>>,
  extra: Partial<Pick<ChoiceField, 'help' | 'onlyFor' | 'onFile'>> = {},
): ChoiceField<K> {
  return { kind: 'choice', label, options, usual: bySystem(usual), ...extra };
}

function usualOf(usual: BySystem<string> | string | undefined): { readonly usual?: BySystem<string> } {
  return usual === undefined ? {} : { usual: bySystem(usual) };
}

function bySystem<T extends string>(usual: T | BySystem<T>): BySystem<T> {
  return typeof usual === 'string' ? { metric: usual, us: usual } : usual;
}
