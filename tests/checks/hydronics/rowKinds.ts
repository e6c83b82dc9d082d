/** Short ways to write a check row; the fields are those of `CheckRow`, in its order. */
import type { CheckRow } from '../checkRow.ts';

type RowWriter = (
  id: string,
  inputs: string,
  quantity: string,
  expected: number,
  tolerance: CheckRow['tolerance'],
  source: string,
  compute: () => number,
) => CheckRow;

/** The number itself is printed in an outside source. */
export const published: RowWriter = (id, inputs, quantity, expected, tolerance, source, compute) => ({
  id,
  inputs,
  quantity,
  expected,
  tolerance,
  kind: 'P',
  source,
  compute,
});

/** The number was worked out elsewhere, from published properties or formulas. */
export const computed: RowWriter = (id, inputs, quantity, expected, tolerance, source, compute) => ({
  id,
  inputs,
  quantity,
  expected,
  tolerance,
  kind: 'C',
  source,
  compute,
});

export function fromMemory(row: CheckRow): CheckRow {
  return { ...row, fromMemory: true };
}

export function percent(tolerancePct: number): CheckRow['tolerance'] {
  return { relative: tolerancePct / 100 };
}

/** Half a unit in the last printed figure, for columns whose own tolerance is not stated. */
export function lastFigure(decimals: number): number {
  return 0.5 * 10 ** -decimals + 1e-12;
}

/** How many different printed rows a table covers: `E6.vessel` and `E6.size` are one. */
export function printedIds(rows: readonly CheckRow[]): readonly string[] {
  return [...new Set(rows.map((row) => row.id.split('.')[0] ?? ''))];
}
