/** What was typed in a run, as text in boxes with a unit beside them, and the facts around it that other checks look at. */
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import type { TrueSite } from './trueSite.ts';

export type Entry = {
  readonly id: string;
  readonly quantity: QuantityKey;
  readonly point: string | null;
  readonly sample: number;
  readonly text: string;
  /** The unit beside the box. */
  readonly unit: string;
  /** Seconds after the visit began. */
  readonly atS: number;
  readonly instrument: 'analyser' | 'manometer' | null;
  readonly itemKey: string;
  readonly stepKey: string;
};

export type Dates = {
  readonly made: string;
  readonly sold: string;
  readonly installed: string;
  readonly started: string;
  readonly occupied: string;
};

export type Party = {
  readonly name: string;
  readonly phones: readonly string[];
  readonly street: string;
  readonly houseNumber: string;
  readonly postcode: string;
};

export type EnteredSet = {
  readonly site: TrueSite;
  readonly unitSystem: 'metric' | 'us';
  readonly entries: readonly Entry[];
  /** An analyser with a CO2 cell of its own; the others work CO2 out from O2 and their fuel setting. */
  readonly measuresCo2: boolean;
  readonly analyserCo2MaxPct: number;
  readonly coRangeMaxPpm: number;
  readonly calibrationDueOn: string;
  /** What the sheet knows. null: a general sheet that fits any model. */
  readonly sheetRatedKw: number | null;
  readonly meterCompensation: 'none' | 'temperature' | 'temperature-pressure';
  readonly highReachedAtS: number;
  readonly lowReachedAtS: number;
  readonly tuningFinishedAtS: number;
  // around the run
  readonly serial: string;
  readonly serialPattern: string | null;
  readonly otherSerials: readonly { readonly serial: string; readonly isOnSameSite: boolean }[];
  readonly dates: Dates;
  /** How the technician types the day of installation. */
  readonly installedText: string;
  readonly today: string;
  readonly cameraOffsetS: number;
  readonly altitudeEnteredM: number;
  readonly neighbourAltitudesM: readonly number[];
  readonly party: Party;
  readonly otherParty: Party;
  readonly isNewBuild: boolean;
  readonly ownerIsBuilder: boolean;
  /** Readings of the job before, by quantity and point. */
  readonly lastJob: Readonly<Record<string, number>>;
};

export const SETTLE_S = 180;
export const VISIT_STARTED_AT = '2026-10-06T08:00:00Z';

export function entriesOf(set: EnteredSet, quantity: QuantityKey, point?: string | null): readonly Entry[] {
  return set.entries.filter((one) => one.quantity === quantity && (point === undefined || one.point === point));
}

export function changed(
  set: EnteredSet,
  quantity: QuantityKey,
  point: string | null,
  change: (entry: Entry) => Partial<Entry>,
): EnteredSet {
  return {
    ...set,
    entries: set.entries.map((one) =>
      one.quantity === quantity && one.point === point ? { ...one, ...change(one) } : one,
    ),
  };
}

/** The texts of two boxes in each other's place, sample by sample. */
export function exchanged(
  set: EnteredSet,
  one: readonly [QuantityKey, string | null],
  other: readonly [QuantityKey, string | null],
): EnteredSet {
  const textOf = ([quantity, point]: readonly [QuantityKey, string | null], sample: number) =>
    entriesOf(set, quantity, point).find((entry) => entry.sample === sample)?.text;
  return {
    ...set,
    entries: set.entries.map((entry) => {
      if (entry.quantity === one[0] && entry.point === one[1]) {
        return { ...entry, text: textOf(other, entry.sample) ?? textOf(other, 1) ?? entry.text };
      }
      if (entry.quantity === other[0] && entry.point === other[1]) {
        return { ...entry, text: textOf(one, entry.sample) ?? textOf(one, 1) ?? entry.text };
      }
      return entry;
    }),
  };
}

export function numberOf(text: string): number {
  return Number(text.replace(',', '.').replace('−', '-'));
}

export function lastNumber(set: EnteredSet, quantity: QuantityKey, point: string | null): number | null {
  const entry = entriesOf(set, quantity, point).at(-1);
  return entry === undefined ? null : numberOf(entry.text);
}
