/**
 * What a worksheet is: its inputs as data, what is worked out from them, and where the formulas come from. One file under
 * `sheets/` defines one; the frame reads what is typed, shows results and reasons, and draws the chart.
 */
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import type { Chart } from '../chart/chart.ts';
import { type Evaluated, evaluate, type TypedInputs } from './evaluate.ts';
import type { Fields, Given } from './fields.ts';
import type { Line } from './line.ts';
import type { UsualTable } from './usual.ts';

export type WorksheetGroup = 'Burner and flue' | 'Gas' | 'Water side' | 'Hot water and water quality';

type About = {
  /** In the address and in the session's memory. */
  readonly key: string;
  readonly title: string;
  /** One line in the list: what it answers. */
  readonly answers: string;
  readonly group: WorksheetGroup;
  /** Where a wrong step can hurt. */
  readonly caution?: string;
  readonly formula: readonly string[];
  /** Where the formulas hold, and how far off they can be. */
  readonly valid: readonly string[];
  readonly source: readonly string[];
  readonly usual?: readonly UsualTable[];
};

export type WorksheetDefinition<F extends Fields> = About & {
  readonly fields: F;
  readonly workOut: (given: Given<F>) => { readonly lines: readonly Line[]; readonly chart?: Chart | null };
};

export type Worksheet = About & {
  readonly fields: Fields;
  readonly evaluate: (typed: TypedInputs, unitSystem: UnitSystem) => Evaluated;
};

export function defineWorksheet<const F extends Fields>(definition: WorksheetDefinition<F>): Worksheet {
  const { workOut, ...about } = definition;
  return { ...about, evaluate: (typed, unitSystem) => evaluate(definition.fields, workOut, typed, unitSystem) };
}
