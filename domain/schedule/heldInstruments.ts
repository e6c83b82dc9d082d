/** What somebody can take along to measure with: which kinds it stands for, and on which days it is in calibration. */
import { calibrationOn } from '../judgement/proof/calibrationOn.ts';
import { canRead } from '../judgement/proof/instrumentKindFor.ts';
import type { QuantityKey } from '../quantity/quantities.ts';
import { INSTRUMENT_KINDS, type InstrumentKind } from '../vocabulary/people.ts';
import { addDays } from './dayMinutes.ts';

export type HeldInstrument = {
  readonly instrumentId: string;
  readonly label: string;
  /** Its own kind, and what it stands in for: an analyser with a pressure port is a manometer as well. */
  readonly kinds: readonly InstrumentKind[];
  /** Kept by nobody: for whoever goes, and for one of them at a time. */
  readonly isShared: boolean;
  /** Those that count, oldest first. */
  readonly calibrations: readonly Calibrated[];
};

type Calibrated = { readonly calibratedOn: string; readonly dueOn: string };

/** What an instrument reads that takes the place of one of that kind; a thermometer in the flue is no analyser yet. */
const TELLING: Partial<Record<InstrumentKind, readonly QuantityKey[]>> = {
  analyser: ['o2DryVolPct', 'co2DryVolPct'],
  manometer: ['inletPressureMbarG', 'burnerPressureMbarG', 'tightnessPressureMbarG', 'tightnessDropMbar'],
};

export function kindsOfInstrument(instrument: Parameters<typeof canRead>[0]): readonly InstrumentKind[] {
  return INSTRUMENT_KINDS.filter(
    (kind) => kind === instrument.kind || (TELLING[kind] ?? []).some((quantity) => canRead(instrument, quantity)),
  );
}

export function isInDate({ calibrations }: Pick<HeldInstrument, 'calibrations'>, on: string): boolean {
  const counts = calibrationOn(calibrations, on);
  return counts !== null && on <= counts.dueOn;
}

export function hasInDate(held: readonly HeldInstrument[], kind: InstrumentKind, on: string): boolean {
  return held.some((one) => one.kinds.includes(kind) && isInDate(one, on));
}

/** The stretches of days on which `isInDate` says yes: each calibration counts until the next one was made. */
export function spansInDate({ calibrations }: Pick<HeldInstrument, 'calibrations'>): readonly {
  readonly validFrom: string;
  readonly validTo: string;
}[] {
  return calibrations
    .map(({ calibratedOn, dueOn }) => {
      const nextOn = calibrations
        .map((one) => one.calibratedOn)
        .filter((on) => on > calibratedOn)
        .sort()[0];
      const counts = calibrationOn(calibrations, calibratedOn);
      const validTo = nextOn === undefined || dueOn < nextOn ? dueOn : addDays(nextOn, -1);
      return { validFrom: calibratedOn, validTo, isCounted: counts?.dueOn === dueOn };
    })
    .filter(({ validFrom, validTo, isCounted }) => isCounted && validFrom <= validTo)
    .map(({ validFrom, validTo }) => ({ validFrom, validTo }));
}
