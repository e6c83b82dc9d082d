/** What the procedure engine says of a run: codes and data only, the words are made where they are shown. */
import type { Finding } from '../judgement/finding.ts';
import type { QuantityKey } from '../quantity/quantities.ts';
import type { OpenNotice } from '../recalls/openNotices.ts';
import type { Block, FuelKey, ItemKind, LapseKind, ModelSheet } from './modelSheet.ts';
import type { RunRecord } from './runRecord.ts';

export type StepList = 'startup' | 'service' | 'repair';

/** Somebody who may have measured, typed or signed. */
export type ProgressPerson = {
  readonly staffId: string;
  readonly name: string;
  readonly isLicensed: boolean;
  /** Their licence has an upper limit, and the appliance's rating is not known. Absent: it is not so. */
  readonly waitsForRating?: boolean;
};

export type RunProgressInput = {
  readonly sheet: ModelSheet;
  readonly steps: StepList;
  readonly record: RunRecord;
  readonly findings: readonly Finding[];
  /** Absent: nobody's licence or part in the work is known, and names are taken as given. */
  readonly people?: readonly ProgressPerson[];
  /** When a licensed person last closed a make-safe on this appliance: what a stop found before then may be read again. */
  readonly firingReleasedAt?: string | null;
  /** When the run was last taken up again after being left; what has grown too old by then is asked again. */
  readonly reopenedAt?: string | null;
  readonly now: string;
};

/** `waiting`: an earlier item of the step, or the one it depends on, comes first. */
export type ItemState = 'open' | 'waiting' | 'running' | 'answered' | 'not-possible' | 'blocked-by-finding';

/** Why an item is not finished. */
export type ItemReason =
  | { readonly code: 'not-answered' }
  | { readonly code: 'waits-for'; readonly itemKey: string }
  | { readonly code: 'may-not-be-left-out'; readonly reason: string }
  | { readonly code: 'not-measured'; readonly quantity: QuantityKey; readonly reason: string }
  | {
      readonly code: 'too-few-samples';
      readonly quantity: QuantityKey;
      readonly have: number;
      readonly need: number;
    }
  | { readonly code: 'firing-point-not-reached'; readonly firingPoint: string }
  | { readonly code: 'hold-running'; readonly secondsLeft: number }
  | { readonly code: 'hold-ended-early'; readonly ranS: number; readonly neededS: number }
  | { readonly code: 'clock-jumped' }
  | { readonly code: 'tuning-running'; readonly nextStageKey: string | null }
  | { readonly code: 'tuning-interrupted'; readonly reason: string | null }
  | { readonly code: 'tuning-stages-missing'; readonly stageKeys: readonly string[] }
  | { readonly code: 'post-run-wait'; readonly secondsLeft: number }
  | { readonly code: 'lapsed'; readonly lapse: LapseKind; readonly hours: number; readonly lastAt: string }
  /** A part was changed at that moment after which it is made again. */
  | { readonly code: 'part-changed-since'; readonly partLabel: string; readonly at: string }
  /** Something was adjusted at that moment: both ends are read again. */
  | { readonly code: 'adjusted-since'; readonly at: string }
  /** Asked because this part was changed on this run. */
  | { readonly code: 'asked-for-part'; readonly partLabel: string }
  | { readonly code: 'stage-not-read'; readonly stageKey: string; readonly quantity: QuantityKey }
  /** The visit may end as one to come back to, never as finished. */
  | { readonly code: 'fault-open'; readonly option: string }
  | { readonly code: 'answered-no' }
  | { readonly code: 'option-needs-explanation'; readonly option: string }
  | { readonly code: 'option-stop'; readonly option: string }
  | { readonly code: 'not-an-option'; readonly value: string }
  | {
      readonly code: 'differs-from-job';
      readonly field: 'serial' | 'plate-fuel' | 'tag-fuel';
      readonly onJob: string;
      readonly seen: string;
    }
  | { readonly code: 'fuel-mismatch'; readonly appliance: FuelKey; readonly site: FuelKey }
  /** Said not to be converted, and the plate is for another fuel than the site burns. */
  | { readonly code: 'plate-for-other-fuel'; readonly plate: FuelKey; readonly site: FuelKey }
  | { readonly code: 'not-licensed'; readonly name: string }
  | { readonly code: 'witness-did-the-work'; readonly name: string }
  /** The answer says that nothing is open, the files say otherwise. */
  | { readonly code: 'open-notice'; readonly notice: OpenNotice }
  | { readonly code: 'finding'; readonly finding: Finding };

/** What stands in the way although no single item is to blame. */
export type RunReason =
  | { readonly code: 'open-make-safe'; readonly count: number }
  | { readonly code: 'open-notice'; readonly notice: OpenNotice }
  | { readonly code: 'plate-fuel-unknown' }
  /** The rating is not known, and nobody is there whose licence is for every size. */
  | { readonly code: 'rating-unknown'; readonly names: readonly string[] }
  | { readonly code: 'fuel-mismatch'; readonly appliance: FuelKey; readonly site: FuelKey }
  | { readonly code: 'fuel-not-on-sheet'; readonly fuel: FuelKey }
  | { readonly code: 'finding'; readonly finding: Finding };

/** One thing that keeps a gate shut; without step and item it is about the run as a whole. */
export type ProgressBlocker = {
  readonly stepKey: string | null;
  readonly itemKey: string | null;
  readonly because: readonly (ItemReason | RunReason)[];
};

/** Counted from stored instants, so it goes on through sleep and restarts. */
export type ItemTimer = {
  readonly kind: 'hold' | 'settle' | 'post-run';
  readonly startedAt: string;
  readonly totalS: number;
  readonly secondsLeft: number;
};

export type TuningProgress = {
  readonly startedAt: string;
  readonly reachedStageKeys: readonly string[];
  /** null: all stages reached, or none begun. */
  readonly nextStageKey: string | null;
};

export type ItemProgress = {
  readonly stepKey: string;
  readonly itemKey: string;
  readonly kind: ItemKind;
  readonly state: ItemState;
  /** Empty when nothing is left to do. */
  readonly because: readonly ItemReason[];
  /** What it stands in the way of as things are. */
  readonly blocks: readonly Block[];
  readonly timer: ItemTimer | null;
  readonly tuning: TuningProgress | null;
};

export type StepState = 'locked' | 'open' | 'done';

export type StepLock =
  | { readonly code: 'step-first'; readonly stepKey: string; readonly itemKeys: readonly string[] }
  | {
      readonly code: 'hold-point';
      readonly block: 'firing' | 'leaving';
      readonly blockers: readonly ProgressBlocker[];
    };

export type StepProgress = {
  readonly stepKey: string;
  /** `done` stays done when a hold point shuts again; `lockedBecause` then says why nothing may be changed in it. */
  readonly state: StepState;
  readonly lockedBecause: readonly StepLock[];
  /** Only items that this run asks for. */
  readonly items: readonly ItemProgress[];
};

export type Gates = { readonly [B in Block]: readonly ProgressBlocker[] };

export type ItemAddress = { readonly stepKey: string; readonly itemKey: string };

export type RunProgress = {
  readonly steps: readonly StepProgress[];
  readonly gates: Gates;
  /** Where Enter goes; null when nothing is left that may be done now. */
  readonly nextItem: ItemAddress | null;
};
