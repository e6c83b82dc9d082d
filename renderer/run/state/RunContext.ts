/** What every part of the run screen may look at and do. */
import { createContext, useContext } from 'react';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import type { PastRun } from '../../../domain/trend/pastRun.ts';
import type { Person } from '../../../electron/contract/app.ts';
import type { InputOf, OperationName, ReplyOf } from '../../../electron/contract/index.ts';
import type { RunView } from '../../../electron/contract/runs.ts';
import type { RunAnalysis } from '../analyseRun.ts';
import type { Instruments } from '../instruments/useInstruments.ts';
import type { WordSource } from '../words/reasonWords.ts';
import type { UnsavedBoxes } from './useUnsavedBoxes.ts';

export type WriteName = Extract<OperationName, `visits.${string}` | `makeSafes.${string}` | 'recalls.settle'>;
/** Sends it and, when it was taken, waits until the run on screen shows it. */
export type Write = <N extends WriteName>(name: N, input: InputOf<N>) => Promise<ReplyOf<N>>;

/**
 * `typed-on`: a text was finished with Enter, and what is typed meanwhile belongs to the next box. `answered`: one key was
 * the answer, and the same key again is a bounce; it is not taken, and that is said.
 */
export type HowLeft = 'typed-on' | 'answered';

export type RunContextValue = {
  readonly view: RunView;
  readonly analysis: RunAnalysis;
  readonly words: WordSource;
  readonly unitSystem: UnitSystem;
  readonly signedIn: Person;
  readonly isSealed: boolean;
  readonly write: Write;
  readonly active: ItemAddress | null;
  readonly goTo: (address: ItemAddress) => void;
  readonly goToStep: (stepKey: string) => void;
  readonly goToLeaving: () => void;
  /** Saves, then moves on; stays where it is when `save` answers false. */
  readonly saveAndGoOn: (from: ItemAddress, save: () => Promise<boolean>, how?: HowLeft) => Promise<void>;
  /** The same within one item: `move` puts the keyboard into the next box. */
  readonly saveThen: (save: () => Promise<boolean>, move: () => void) => Promise<void>;
  /** Keys pressed before the box on screen was there, which it therefore did not take. */
  readonly keysTooEarly: string;
  /** Says it of these too. */
  readonly sayNotTaken: (keys: string) => void;
  readonly makeSafe: (what: string) => void;
  /** Readings out of an instrument's own file. */
  readonly takeIn: () => void;
  readonly unsaved: UnsavedBoxes;
  readonly instruments: Instruments;
  /** Earlier visits to the same appliance, oldest first; none when this is the startup. */
  readonly past: readonly PastRun[];
  /** Who reads the instrument, unless said otherwise. */
  readonly measuredById: string;
  readonly chooseMeasuredBy: (staffId: string) => void;
};

export const RunContext = createContext<RunContextValue | null>(null);

export function useRun(): RunContextValue {
  const value = useContext(RunContext);
  if (value === null) throw new Error('a part of the run is shown outside of it');
  return value;
}
