/**
 * Where on one day more people need an instrument than there are of it: what nobody keeps is in date for each of them, and can
 * be with one. Times of day are left out: one may hand it on at noon, and that is for them to say.
 */
import type { InstrumentKind } from '../vocabulary/people.ts';
import { type HeldInstrument, isInDate } from './heldInstruments.ts';

/** Somebody on the way on a day, and the kinds their visits there are measured with. */
export type Outing = { readonly on: string; readonly staffId: string; readonly kinds: readonly InstrumentKind[] };

export type Shortage = {
  readonly on: string;
  readonly kind: InstrumentKind;
  /** Who has none in date of their own, in the order of the visits. */
  readonly staffIds: readonly string[];
  /** Fewer than people, and at least one: where there is none at all, that is said of each of them. */
  readonly inDate: number;
};

export function findShortages(
  outings: readonly Outing[],
  people: readonly { readonly staffId: string; readonly instruments: readonly HeldInstrument[] }[],
): readonly Shortage[] {
  const held = new Map(people.map((one) => [one.staffId, one.instruments]));
  const days = Map.groupBy(outings, ({ on }) => on);
  return [...days.keys()].sort().flatMap((on) => {
    const ofDay = days.get(on) ?? [];
    const kinds = [...new Set(ofDay.flatMap((one) => one.kinds))].sort();
    return kinds.flatMap((kind): readonly Shortage[] => {
      const usable = (staffId: string): readonly HeldInstrument[] =>
        (held.get(staffId) ?? []).filter((one) => one.kinds.includes(kind) && isInDate(one, on));
      const needing = [...new Set(ofDay.filter((one) => one.kinds.includes(kind)).map(({ staffId }) => staffId))];
      const staffIds = needing.filter((staffId) => usable(staffId).every(({ isShared }) => isShared));
      const inDate = new Set(staffIds.flatMap((staffId) => usable(staffId).map((one) => one.instrumentId))).size;
      return inDate > 0 && inDate < staffIds.length ? [{ on, kind, staffIds, inDate }] : [];
    });
  });
}
