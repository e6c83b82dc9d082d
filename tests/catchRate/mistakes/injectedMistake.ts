/**
 * One way to get a run wrong, by its row in the trade's list. What computation can see of it at all is said by `isCatchable`,
 * written from the list and from physics before anything was measured, and never changed to fit a result.
 */
import type { EnteredSet } from '../enteredSet.ts';
import type { Random } from '../random.ts';

export type InjectedMistake = {
  readonly row: number;
  readonly title: string;
  /** null: this set has no place for the mistake (no such box, no such unit). */
  readonly inject: (set: EnteredSet, random: Random) => EnteredSet | null;
  readonly isCatchable: (mistaken: EnteredSet, clean: EnteredSet) => boolean;
};
