/** The firm's own travel times: minutes from one named place to another, kept by names as they are compared. */
import { foldForSearch } from '../text/foldForSearch.ts';

/** Names as they were written. */
export type TravelPair = { readonly from: string; readonly to: string; readonly minutes: number };

/** By the folded names of two places. */
export type TravelTable = ReadonlyMap<string, ReadonlyMap<string, number>>;

export const NO_TABLE: TravelTable = new Map();

/** A line does for the way back as well, unless that has a line of its own. */
export function toTravelTable(pairs: readonly TravelPair[]): TravelTable {
  const table = new Map<string, Map<string, number>>();
  const put = (from: string, to: string, minutes: number, isOwnLine: boolean): void => {
    const row = table.get(from) ?? new Map<string, number>();
    table.set(from, row);
    if (isOwnLine || !row.has(to)) row.set(to, minutes);
  };
  for (const { from, to, minutes } of pairs) put(foldForSearch(from), foldForSearch(to), minutes, true);
  for (const { from, to, minutes } of pairs) put(foldForSearch(to), foldForSearch(from), minutes, false);
  return table;
}

/** The names most particular first on both sides; undefined: the table does not say. */
export function findWay(table: TravelTable, from: readonly string[], to: readonly string[]): number | undefined {
  for (const start of from) {
    const row = table.get(start);
    if (row === undefined) continue;
    for (const end of to) {
      const minutes = row.get(end);
      if (minutes !== undefined) return minutes;
    }
  }
  return undefined;
}
