/**
 * Everything recorded in one run, as plain data: what the judgement judges, the procedure engine walks and the packet prints.
 * Instants are ISO UTC strings, calendar days 'YYYY-MM-DD'. Nothing in it is derived.
 */
import type { QuantityKey } from '../quantity/quantities.ts';
import type { OpenNotice } from '../recalls/openNotices.ts';
import type { InstrumentKind } from '../vocabulary/people.ts';
import type { EmitterKind, FuelKey } from './modelSheet.ts';

export type RecordedReading = {
  readonly readingId: string;
  readonly visitId: string;
  readonly stepKey: string;
  readonly itemKey: string;
  readonly quantity: QuantityKey;
  readonly point: string | null;
  /** Counts from 1 inside a series. */
  readonly sample: number;
  readonly typedText: string;
  readonly typedUnit: string;
  /** In the quantity's own unit; null when not measured. */
  readonly valueOwn: number | null;
  /** `>`: the instrument was over its range, the truth is at least this. */
  readonly comparator: '=' | '>' | '<';
  readonly notMeasuredReason: string | null;
  readonly instrumentId: string | null;
  readonly measuredById: string;
  readonly typedById: string;
  readonly measuredAt: string;
  /** The reading that replaced this one; the original stays. */
  readonly supersededById: string | null;
  /** How it came to be: typed at the appliance, taken from a suggestion, or copied from paper later. */
  readonly origin: 'typed' | 'suggestion' | 'transcribed' | 'imported';
};

/** Copied from paper afterwards: the times are times of day as somebody wrote them, to the minute. */
export type Transcription = { readonly typedById: string; readonly typedAt: string };

/** Every answer given, the newest of an item counts. */
export type RecordedAnswer = {
  readonly itemKey: string;
  readonly stepKey: string;
  /** Confirm: yes/no/not-applicable; choose: the option; note: the words; witness and sign-off: the name. */
  readonly value: string | null;
  /** Why it is not possible, or why the answer stands all the same. */
  readonly reason: string | null;
  /** What a test was made with; absent or null: with none, or nobody said. */
  readonly instrumentId?: string | null;
  readonly byId: string;
  readonly at: string;
  /** Absent or null: answered in the app. The same below. */
  readonly transcribed?: Transcription | null;
};

export type RecordedHold = {
  readonly itemKey: string;
  readonly startedAt: string;
  readonly requiredS: number;
  readonly endedAt: string | null;
  /** The laptop's clock moved against its steady clock while the hold ran: the wait is not proven. */
  readonly clockJumped: boolean;
  readonly transcribed?: Transcription | null;
};

export type RecordedTuning = {
  readonly itemKey: string;
  readonly startedAt: string;
  readonly stages: readonly { readonly stageKey: string; readonly reachedAt: string }[];
  readonly finishedAt: string | null;
  /** Load lost or casing opened: the run must be started again. */
  readonly interruptedAt: string | null;
  readonly interruptedReason: string | null;
  readonly transcribed?: Transcription | null;
};

export type RecordedPart = {
  readonly rowId: string;
  readonly itemKey: string;
  /** Of the sheet's list. */
  readonly partKey: string;
  /** As the sheet named it then. */
  readonly label: string;
  readonly partNumber: string;
  readonly serial: string | null;
  readonly byId: string;
  readonly at: string;
};

export type RecordedLockout = {
  readonly rowId: string;
  readonly itemKey: string;
  readonly happenedAt: string;
  /** As the display showed it; null: nobody saw it. */
  readonly code: string | null;
  readonly outdoorTypedText: string | null;
  readonly outdoorTypedUnit: string | null;
  /** null: nobody knows. */
  readonly outdoorC: number | null;
  readonly byId: string;
  readonly at: string;
};

export type RecordedPhoto = {
  readonly itemKey: string;
  readonly attachmentId: string;
  readonly sha256: string;
  readonly takenAt: string;
  /** Of the copy without anything that may say where: that one goes out. Absent: the photo says nothing of the kind. */
  readonly copySha256?: string;
};

/** When the burner reached a firing point. */
export type RecordedFiringPoint = {
  readonly firingPoint: string;
  readonly reachedAt: string;
  readonly transcribed?: Transcription | null;
};

export type RecordedSignOff = {
  readonly itemKey: string;
  readonly by: 'licensed' | 'occupant';
  readonly name: string;
  readonly staffId: string | null;
  readonly at: string;
  /** Of the drawn signature's picture; absent: only the name was typed. */
  readonly signatureSha256?: string;
  readonly transcribed?: Transcription | null;
};

export type RecordedCalibration = {
  readonly calibratedOn: string;
  /** The last day it is good for. */
  readonly dueOn: string;
  readonly certificate: string | null;
};

export type RecordedInstrument = {
  readonly instrumentId: string;
  readonly label: string;
  readonly serial: string;
  readonly kind: InstrumentKind;
  /** All on file, oldest first; none: never calibrated, or nobody knows. Which one counts is known only with the reading's day. */
  readonly calibrations: readonly RecordedCalibration[];
  /** Accuracy class as data: `abs` in the quantity's own unit, `relPct` of the value; the larger counts. */
  readonly accuracy: Readonly<Partial<Record<QuantityKey, { readonly abs: number; readonly relPct: number }>>>;
  readonly rangeMax: Readonly<Partial<Record<QuantityKey, number>>>;
};

export type RecordedSite = {
  readonly altitudeM: number | null;
  readonly systemHeightM: number | null;
  readonly systemVolumeL: number | null;
  readonly emitters: readonly EmitterKind[];
  /** What gives off the heat, zone by zone; null: not known. Absent: nobody wrote it down. */
  readonly zones?: readonly { readonly zone: string | null; readonly ratedKw: number | null }[];
  readonly fuel: FuelKey | null;
  readonly gasSupplyKind: 'meter' | 'tank' | null;
  readonly meterCompensation: 'none' | 'temperature' | 'temperature-pressure' | null;
  readonly heatingValueMjPerM3: number | null;
  readonly heatingValueSource: string | null;
  readonly jurisdiction: string;
  readonly timeZone: string;
  readonly coldWaterC: number | null;
};

export type RecordedAppliance = {
  readonly serial: string;
  readonly maker: string;
  readonly model: string;
  readonly plateFuel: FuelKey | null;
  /** Tag or carton, when it says a fuel of its own. */
  readonly tagFuel: FuelKey | null;
  /** Set up for the fuel burnt here by the visit's day, with kit, orifice and photo on record. */
  readonly hasConversionRecord: boolean;
  readonly ratedInputKw: number | null;
  readonly ratedInputBasis: 'gross' | 'net';
  /** Elbows in the vent; absent or null: not known. */
  readonly ventElbows?: number | null;
};

export type RunRecord = {
  readonly runId: string;
  readonly kind: 'startup' | 'service' | 'repair' | 'follow-up';
  readonly fuel: FuelKey;
  readonly startedAt: string | null;
  readonly site: RecordedSite;
  readonly appliance: RecordedAppliance;
  readonly instruments: readonly RecordedInstrument[];
  readonly answers: readonly RecordedAnswer[];
  readonly readings: readonly RecordedReading[];
  readonly holds: readonly RecordedHold[];
  readonly tunings: readonly RecordedTuning[];
  /** Absent: of a record made before they were kept. */
  readonly parts?: readonly RecordedPart[];
  readonly lockouts?: readonly RecordedLockout[];
  readonly photos: readonly RecordedPhoto[];
  readonly firingPoints: readonly RecordedFiringPoint[];
  readonly signOffs: readonly RecordedSignOff[];
  /** Open make-safe on this appliance: nothing may fire. */
  readonly openMakeSafes: number;
  /** Notices that nobody has settled for this appliance: nothing may fire, unless they only inform. */
  readonly openNotices: readonly OpenNotice[];
};
