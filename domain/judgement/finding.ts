/** What the judgement says of a reading, and why. Four parts, fixed before anything is sealed. */
import type { Basis, Block } from '../procedure/modelSheet.ts';
import type { QuantityKey } from '../quantity/quantities.ts';

export const VERDICTS = [
  'within',
  'near-the-edge',
  'outside',
  'stop',
  'no-limit-on-sheet',
  'cannot-tell-apart',
  'cannot-judge',
] as const;
export type Verdict = (typeof VERDICTS)[number];

/** A limit as it was applied, in the quantity's own unit. */
export type AppliedLimit = {
  readonly quantity: QuantityKey;
  readonly point: string | null;
  readonly min: number | null;
  readonly max: number | null;
  readonly severity: 'outside' | 'stop';
};

export type NotProvenReason =
  | 'not-steady'
  | 'too-few-samples'
  | 'before-settled'
  | 'tuning-not-finished'
  | 'instrument-out-of-date'
  | 'instrument-not-zeroed'
  | 'wrong-instrument'
  | 'instrument-not-calibrated'
  | 'instrument-unknown'
  | 'water-side-not-at-zero'
  | 'hold-lapsed'
  | 'clock-jumped'
  | 'from-paper'
  | 'over-range';

export type Proof =
  | { readonly proven: true }
  | { readonly proven: false; readonly because: readonly NotProvenReason[] };

/** Where the demand comes from and how the judged number was made. */
export type FindingBasis = {
  readonly limit: AppliedLimit | null;
  /**
   * `sheet`: the model sheet's own; `ceiling`: a cited safety ceiling that stands outside every sheet; `physics`: cannot be
   * otherwise; `practice`: a habit of the trade, shown as such and never as the maker's.
   */
  readonly from: 'sheet' | 'ceiling' | 'physics' | 'practice' | 'none';
  readonly source: Basis | null;
  /** Sheet and revision, when the sheet said it. */
  readonly sheet: { readonly sheetId: string; readonly revision: string } | null;
  readonly formula: string | null;
  /** Numbers as used, and under `….reading` the ids of the readings they came from. */
  readonly inputs: Readonly<Record<string, number | string>>;
  /** What the formula gave, when the judged number was computed. `plusMinus`: as far as the instruments can be off; null: unknown. */
  readonly result?: { readonly value: number; readonly unit: string; readonly plusMinus: number | null };
};

/** One key press for the technician; the original is kept beside it. */
export type Suggestion = {
  readonly code: SuggestionCode;
  /** The readings it would change and what they would become, in their own units. */
  readonly changes: readonly { readonly readingId: string; readonly toOwn: number; readonly quantity: QuantityKey }[];
  /** True when taking it would turn a stop or an outside finding better: then a new reading is asked for instead. */
  readonly needsNewReading: boolean;
};

export type SuggestionCode =
  | 'o2-co2-swapped'
  | 'analyser-on-other-fuel'
  | 'air-free-typed-as-measured'
  | 'percent-not-ppm'
  | 'over-range-written-as-value'
  | 'ratio-mistyped'
  | 'decimal-point-missing'
  | 'fahrenheit-in-celsius'
  | 'celsius-in-fahrenheit'
  | 'inches-as-mbar'
  | 'mbar-as-inches'
  | 'psi-as-bar'
  | 'bar-as-psi'
  | 'absolute-not-gauge'
  | 'static-dynamic-swapped'
  | 'power-unit'
  | 'dial-size'
  | 'heating-value-times-ten'
  | 'digits-swapped'
  | 'supply-return-swapped'
  | 'flue-below-return'
  | 'read-before-steady'
  | 'analyser-not-zeroed'
  | 'instrument-out-of-date'
  | 'high-low-swapped'
  | 'copied-readings'
  | 'serial-confusable'
  | 'serial-elsewhere'
  | 'day-month-swapped'
  | 'wrong-year'
  | 'clock-differs'
  | 'date-kinds-confused'
  | 'feet-as-metres'
  | 'duplicate-party'
  | 'owner-is-builder'
  | 'fields-swapped'
  | 'blank-as-zero';

export type Finding = {
  /** The reading it is about; for a computed value (flue loss, clocked input) the readings it came from are in the inputs. */
  readonly readingId: string | null;
  readonly subject: string;
  readonly verdict: Verdict;
  readonly proof: Proof;
  readonly blocks: readonly Block[];
  readonly basis: FindingBasis;
  readonly suggestions: readonly Suggestion[];
  /** For `cannot-judge`: what is missing, in words a technician knows. */
  readonly missing: readonly string[];
  /** For a stop: how to make safe, in order. */
  readonly makeSafe: readonly string[];
  /** Everybody out before anything else; typing and recording come afterwards. */
  readonly leaveFirst?: true;
};
