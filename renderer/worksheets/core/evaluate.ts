/** From what is typed to what is shown, for any worksheet: pure, so that a published example can be followed from box to result. */
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import { parseAmount, type TypedProblem } from '../../../domain/quantity/parseTyped.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { err, ok } from '../../../domain/result.ts';
import type { Chart } from '../chart/chart.ts';
import type { ChoiceField, Field, Fields, Given, NumberField } from './fields.ts';
import type { Line, LineTone, LineValue } from './line.ts';
import { type Measure, showNumber, unitOf } from './measure.ts';
import { fieldsOutOfRange, outOfRangeWords, whyWords } from './whyWords.ts';
import type { Why, Worked } from './worked.ts';

/** As typed; a field without an entry has not been touched and holds its usual figure. */
export type TypedInputs = Readonly<Record<string, TypedInput>>;
export type TypedInput = {
  readonly text: string;
  /** Absent: the unit of the person's own system. */
  readonly unit?: string | undefined;
};

export type ShownLine = {
  readonly label: string;
  /** Empty when it is not known. */
  readonly text: string;
  readonly unit: string;
  readonly tone: LineTone;
  /** Why it is not known; null when it is. */
  readonly because: string | null;
  readonly isMain: boolean;
};

export type Evaluated = {
  readonly lines: readonly ShownLine[];
  /** By field: the sentence that stands by it. */
  readonly problems: Readonly<Record<string, FieldProblem>>;
  readonly chart: Chart | null;
};

export type FieldProblem =
  | { readonly kind: 'typed'; readonly problem: TypedProblem }
  | { readonly kind: 'words'; readonly words: string };

export function evaluate<F extends Fields>(
  fields: F,
  workOut: (given: Given<F>) => { readonly lines: readonly Line[]; readonly chart?: Chart | null },
  typed: TypedInputs,
  unitSystem: UnitSystem,
): Evaluated {
  const problems: Record<string, FieldProblem> = {};
  // A number that a formula refuses is looked for among these: an empty box is not to blame for one worked out from others.
  const known: Record<string, Field> = {};
  const given = Object.fromEntries(
    Object.entries<Field>(fields).map(([key, field]) => {
      if (field.kind === 'choice') return [key, chosen(field, typed[key], unitSystem)];
      const read = readNumber(field, typed[key], unitSystem);
      if (read.value.ok) known[key] = field;
      if (read.problem !== null && isAsked(field, fields, typed, unitSystem)) problems[key] = read.problem;
      return [key, read.value];
    }),
  );
  // Read field by field from the very record the type is made of.
  const { lines, chart = null } = workOut(given as Given<F>);
  const whys = lines.flatMap(({ is }) => (is.ok ? [] : is.error));
  for (const [key, outside] of fieldsOutOfRange(known, whys)) {
    const field = known[key];
    if (field?.kind !== 'number') continue;
    problems[key] = { kind: 'words', words: outOfRangeWords(outside, field.label, field.measure, unitSystem) };
  }
  return {
    lines: lines.flatMap((line) => shownLine(line, known, unitSystem) ?? []),
    problems,
    chart,
  };
}

/** Whether a field is in use, as things are chosen. */
export function isAsked(field: Field, fields: Fields, typed: TypedInputs, unitSystem: UnitSystem): boolean {
  const { onlyFor } = field;
  if (onlyFor === undefined) return true;
  const other = fields[onlyFor.field];
  return other?.kind === 'choice' && onlyFor.is.includes(chosen(other, typed[onlyFor.field], unitSystem));
}

export function chosen(field: ChoiceField, typed: TypedInput | undefined, unitSystem: UnitSystem): string {
  const usual = field.usual[unitSystem];
  return typed !== undefined && Object.hasOwn(field.options, typed.text) ? typed.text : usual;
}

/** What stands in a number's box, and in which unit. */
export function typedNumber(
  field: NumberField,
  typed: TypedInput | undefined,
  unitSystem: UnitSystem,
): { readonly text: string; readonly unit: string } {
  return {
    text: typed?.text ?? field.usual?.[unitSystem] ?? '',
    unit: typed?.unit ?? unitOf(field.measure, unitSystem).symbol,
  };
}

function readNumber(
  field: NumberField,
  typed: TypedInput | undefined,
  unitSystem: UnitSystem,
): { readonly value: Worked<number>; readonly problem: FieldProblem | null } {
  const { text, unit } = typedNumber(field, typed, unitSystem);
  const { label, measure, possible } = field;
  const read = parseAmount({ ...measure, possible }, text, unit);
  if (!read.ok) {
    return read.error.code === 'empty'
      ? { value: err([{ code: 'missing', label }]), problem: null }
      : { value: err([{ code: 'unreadable', label }]), problem: { kind: 'typed', problem: read.error } };
  }
  if (read.value.comparator !== '=') {
    return { value: err([{ code: 'unreadable', label }]), problem: { kind: 'words', words: OVER_THE_RANGE } };
  }
  return { value: ok(read.value.valueOwn), problem: null };
}

const OVER_THE_RANGE = 'Over or under the range is no number to work with: type the number itself.';

function shownLine(line: Line, fields: Fields, unitSystem: UnitSystem): ShownLine | null {
  const { label, measure, is, isMain, isExtra } = line;
  if (is.ok) return { label, isMain, because: null, ...shownValue(is.value, measure, unitSystem) };
  if (isExtra && is.error.every(isMissing)) return null;
  return { label, isMain, text: '', unit: '', tone: 'plain', because: whyWords(is.error, fields, unitSystem) };
}

function isMissing({ code }: Why): boolean {
  return code === 'missing';
}

function shownValue(
  value: LineValue,
  measure: Measure,
  unitSystem: UnitSystem,
): Pick<ShownLine, 'text' | 'unit' | 'tone'> {
  switch (value.kind) {
    case 'number': {
      const { text, unit } = showNumber(measure, value.value, unitSystem);
      const spread = value.plusMinus === undefined ? '' : ` ± ${spreadText(measure, value.plusMinus, unitSystem)}`;
      return { text: text + spread, unit, tone: 'plain' };
    }
    case 'range': {
      const [least, most] = [value.least, value.most].map((end) => showNumber(measure, end, unitSystem));
      const isOne = least?.text === most?.text;
      return {
        text: isOne ? (least?.text ?? '') : `${least?.text} to ${most?.text}`,
        unit: least?.unit ?? '',
        tone: 'plain',
      };
    }
    case 'words':
      return { text: value.words, unit: '', tone: value.tone };
  }
}

/** To two figures; as a difference, which a °F point would shift. */
function spreadText(measure: Measure, plusMinus: number, unitSystem: UnitSystem): string {
  const unit = unitOf(measure, unitSystem);
  const spread = Math.abs(unit.fromOwn(plusMinus) - unit.fromOwn(0));
  const decimals = spread === 0 ? 0 : Math.min(MOST_DECIMALS, Math.max(0, 1 - Math.floor(Math.log10(spread))));
  return formatNumber(spread, decimals);
}

const MOST_DECIMALS = 6;
