/** One result of a worksheet: a number with its unit, or words; known, or with the reasons why not. */
import { ok } from '../../../domain/result.ts';
import type { Measure } from './measure.ts';
import { type Worked, work } from './worked.ts';

export type LineTone = 'good' | 'doubt' | 'bad' | 'plain';

export type LineValue =
  | { readonly kind: 'number'; readonly value: number; readonly plusMinus?: number | undefined }
  | { readonly kind: 'range'; readonly least: number; readonly most: number }
  | { readonly kind: 'words'; readonly words: string; readonly tone: LineTone };

export type Line = {
  readonly label: string;
  readonly measure: Measure;
  readonly is: Worked<LineValue>;
  /** What one came for. */
  readonly isMain: boolean;
  /** Nothing is said while its own inputs are empty: it is an extra, not the question. */
  readonly isExtra: boolean;
};

type Kind = { readonly main?: boolean; readonly extra?: boolean };

export function numberLine(
  label: string,
  measure: Measure,
  value: Worked<number>,
  kind: Kind & { readonly plusMinus?: (value: number) => number | undefined } = {},
): Line {
  return {
    label,
    measure,
    is: work({ value }, (known) =>
      ok({ kind: 'number', value: known.value, plusMinus: kind.plusMinus?.(known.value) }),
    ),
    ...weight(kind),
  };
}

export function rangeLine(
  label: string,
  measure: Measure,
  range: Worked<readonly [least: number, most: number]>,
  kind: Kind = {},
): Line {
  return {
    label,
    measure,
    is: work({ range }, ({ range: [least, most] }) => ok({ kind: 'range', least, most })),
    ...weight(kind),
  };
}

export function wordsLine(
  label: string,
  words: Worked<string | { readonly words: string; readonly tone: LineTone }>,
  kind: Kind = {},
): Line {
  return {
    label,
    measure: NO_MEASURE,
    is: work({ words }, (known) =>
      ok(
        typeof known.words === 'string'
          ? { kind: 'words', words: known.words, tone: 'plain' }
          : { kind: 'words', ...known.words },
      ),
    ),
    ...weight(kind),
  };
}

function weight({ main = false, extra = false }: Kind): Pick<Line, 'isMain' | 'isExtra'> {
  return { isMain: main, isExtra: extra };
}

const NO_MEASURE: Measure = {
  dimension: null,
  units: [{ symbol: '', spellings: [], toOwn: (typed) => typed, fromOwn: (own) => own }],
};
