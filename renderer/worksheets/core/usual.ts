/** Figures that practice knows, shown beside a worksheet; no reading is judged by them. */
import type { Measure } from './measure.ts';

export type UsualFigure = {
  readonly measure: Measure;
  /** null: open to that side. */
  readonly least: number | null;
  readonly most: number | null;
};

export type UsualRow = {
  readonly label: string;
  /** One for each column; null where nothing is said. */
  readonly figures: readonly (UsualFigure | null)[];
  /** What goes with it, and where it is from. */
  readonly notes: readonly string[];
};

export type UsualTable = {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly UsualRow[];
};

export function between(measure: Measure, [least, most]: readonly [least: number, most: number]): UsualFigure {
  return { measure, least, most };
}

export function exactly(measure: Measure, value: number): UsualFigure {
  return { measure, least: value, most: value };
}

export function atLeast(measure: Measure, least: number): UsualFigure {
  return { measure, least, most: null };
}

export function atMost(measure: Measure, most: number): UsualFigure {
  return { measure, least: null, most };
}
