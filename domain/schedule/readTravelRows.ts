/** Reads a table of travel times: columns from, to and minutes, one way a line. What is wrong is named with its line. */
import { err, ok, type Result } from '../result.ts';
import { foldForSearch } from '../text/foldForSearch.ts';
import type { TravelPair } from './travelTable.ts';

export const TRAVEL_COLUMNS = ['from', 'to', 'minutes'] as const;
export type TravelColumn = (typeof TRAVEL_COLUMNS)[number];

/** Longer is no way to a job but a slip in typing. */
export const LONGEST_WAY_MIN = 600;

export type TravelLineFault =
  | { readonly row: number; readonly code: 'name-missing'; readonly column: 'from' | 'to' }
  | { readonly row: number; readonly code: 'not-whole-minutes'; readonly typed: string }
  /** The same way stands in an earlier line with other minutes. */
  | { readonly row: number; readonly code: 'said-otherwise'; readonly earlierRow: number };

export type TravelTableFault =
  | { readonly code: 'columns-missing'; readonly missing: readonly TravelColumn[] }
  | { readonly code: 'lines-wrong'; readonly lines: readonly TravelLineFault[] };

export function readTravelRows(
  headings: readonly string[],
  rows: readonly { readonly row: number; readonly cells: readonly string[] }[],
): Result<readonly TravelPair[], TravelTableFault> {
  const folded = headings.map(foldForSearch);
  const missing = TRAVEL_COLUMNS.filter((column) => !folded.includes(column));
  if (missing.length > 0) return err({ code: 'columns-missing', missing });
  const cellOf = (cells: readonly string[], column: TravelColumn): string =>
    (cells[folded.indexOf(column)] ?? '').trim();
  const pairs: TravelPair[] = [];
  const lines: TravelLineFault[] = [];
  const seen = new Map<string, { readonly row: number; readonly minutes: number }>();
  for (const { row, cells } of rows) {
    const from = cellOf(cells, 'from');
    const to = cellOf(cells, 'to');
    const typed = cellOf(cells, 'minutes');
    if (foldForSearch(from) === '') lines.push({ row, code: 'name-missing', column: 'from' });
    if (foldForSearch(to) === '') lines.push({ row, code: 'name-missing', column: 'to' });
    const minutes = /^\d{1,3}$/u.test(typed) ? Number(typed) : Number.NaN;
    if (!(minutes <= LONGEST_WAY_MIN)) {
      lines.push({ row, code: 'not-whole-minutes', typed });
      continue;
    }
    const key = JSON.stringify([foldForSearch(from), foldForSearch(to)]);
    const earlier = seen.get(key);
    if (earlier !== undefined && earlier.minutes !== minutes)
      lines.push({ row, code: 'said-otherwise', earlierRow: earlier.row });
    if (earlier !== undefined) continue;
    seen.set(key, { row, minutes });
    pairs.push({ from, to, minutes });
  }
  return lines.length > 0 ? err({ code: 'lines-wrong', lines }) : ok(pairs);
}
