/** An export read by a mapping: for each row its moment and its numbers, each a reading or what stands against it. */
import type { TypedProblem, TypedValue } from '../quantity/parseTyped.ts';
import type { QuantityKey } from '../quantity/quantities.ts';
import type { Result } from '../result.ts';
import type { ExportMapping } from './exportMapping.ts';
import type { ExportTable } from './exportTable.ts';
import { readExportCell } from './readExportCell.ts';
import { type ExportTimeProblem, readExportTime } from './readExportTime.ts';

export type ExportValue = {
  readonly quantity: QuantityKey;
  readonly cell: string;
  readonly unit: string;
  readonly read: Result<TypedValue, TypedProblem>;
};

export type ExportRow = {
  /** null: the file has no time, or no cell of it is filled. */
  readonly measuredAt: Result<string, ExportTimeProblem> | null;
  readonly values: readonly ExportValue[];
};

export function readExport(
  table: ExportTable,
  mapping: ExportMapping,
  where: { readonly timeZone: string; readonly day: string },
): readonly ExportRow[] {
  const columns = table.headings.map((heading) => mapping.columns.find((one) => one.heading === heading));
  return table.rows.map((row) => {
    const timeText = columns
      .flatMap((column, index) => (column?.means === 'time' ? [row[index] ?? ''] : []))
      .join(' ')
      .trim();
    return {
      measuredAt: timeText === '' ? null : readExportTime(timeText, { ...where, dayOrder: mapping.dayOrder }),
      values: columns.flatMap((column, index): ExportValue[] => {
        if (column?.means !== 'quantity') return [];
        const cell = row[index] ?? '';
        const read = readExportCell(column.quantity, cell, column.unit, mapping.decimalSign);
        return read === null ? [] : [{ quantity: column.quantity, cell, unit: column.unit, read }];
      }),
    };
  });
}
