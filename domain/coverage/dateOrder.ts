/** The order in which an appliance's dates can only have happened: made ≤ sold ≤ installed ≤ started. */
import type { CoverDate } from '../procedure/modelSheet.ts';

/** Occupancy and title transfer have no fixed place: a house may be lived in long before its boiler is changed. */
const ORDER: readonly CoverDate[] = ['made', 'sold', 'installed', 'started'];

export type KnownDate = { readonly kind: CoverDate; readonly on: string; readonly precision: 'day' | 'month' | 'year' };

/** The first pair that contradicts the order; dates known only to the month or year are compared that far. */
export function findDateOrderProblem(
  dates: readonly KnownDate[],
): { readonly earlier: CoverDate; readonly later: CoverDate } | null {
  const known = ORDER.flatMap((kind) => dates.filter((date) => date.kind === kind));
  for (const [index, later] of known.entries()) {
    for (const earlier of known.slice(0, index)) {
      const length = Math.min(comparableLength(earlier), comparableLength(later));
      if (earlier.on.slice(0, length) > later.on.slice(0, length)) return { earlier: earlier.kind, later: later.kind };
    }
  }
  return null;
}

function comparableLength(date: KnownDate): number {
  return { day: 10, month: 7, year: 4 }[date.precision];
}
