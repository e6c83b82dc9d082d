/** The planner: a proposal for a range of days that changes nothing until it is accepted, and slots for a caller. */
import { z } from 'zod';
import { PLACEMENT_GROUNDS } from '../../domain/schedule/explainPlacement.ts';
import type { Obstacle } from '../../domain/schedule/obstacles.ts';
import type { Shortage } from '../../domain/schedule/sharedInstruments.ts';
import type { UnplannedReason } from '../../domain/schedule/unplannedReason.ts';
import { day, domainValue, id, nothing, operation } from './operation.ts';
import { jobKind, visitChanged, visitState } from './visits.ts';
import { minuteOfDay } from './workforce.ts';

/**
 * `fill`: what is placed stays, waiting jobs go into the gaps. `rebuild`: everything that is not pinned or begun may move.
 * `repair`: what can stay stays, the rest moves as little as possible; waiting jobs are left waiting.
 */
export const planMode = z.enum(['fill', 'rebuild', 'repair']);
export type PlanMode = z.output<typeof planMode>;

/** A visit on the board, or a job that waits for one. */
const planned = z.strictObject({ kind: z.enum(['visit', 'job']), id });

const placement = z.strictObject({ staffId: id, date: day, startMin: minuteOfDay });

const what = {
  ref: planned,
  /** Of a job longer than a day: which of its days. */
  part: z.strictObject({ number: z.number().int(), of: z.number().int() }).nullable(),
  customerName: z.string(),
  street: z.string(),
  city: z.string(),
  jobKinds: z.array(jobKind),
  durationMin: z.number().int(),
  /** At the appliances of the visit. */
  openMakeSafes: z.number().int(),
};

const move = z.strictObject({
  ...what,
  from: placement.partial({ startMin: true }).nullable(),
  to: placement,
  /** The customer had been told another day or window. */
  movesPromise: z.boolean(),
  /** What speaks against this person and does not forbid it, as the board will say: no training, no instrument in date. */
  toWeigh: z.array(domainValue<Obstacle>()),
  /** null while the search runs. */
  ground: z.enum(PLACEMENT_GROUNDS).nullable(),
  extraTravelMin: z.number().int().nullable(),
});
export type ProposedMove = z.output<typeof move>;

export type LeftOutReason =
  | UnplannedReason
  | { readonly code: 'not-ready'; readonly items: readonly string[] }
  /** Longer than anybody's day, and nobody who may do it has that many working days in a row free from the morning on. */
  | { readonly code: 'no-days-in-a-row' };

function isReason(value: unknown): boolean {
  return typeof value === 'object' && value !== null && 'code' in value;
}

const leftOut = z.strictObject({
  ...what,
  /** When it is booked; null: it waits. */
  booked: z.strictObject({ date: day, startMin: minuteOfDay.nullable() }).nullable(),
  reasons: z.array(z.custom<LeftOutReason>(isReason)),
});
export type LeftOut = z.output<typeof leftOut>;

/** S1 to S7, and W before S5; see domain/schedule/plan.ts. */
const goals = z.strictObject({
  leftOut: z.number().int(),
  daysLate: z.number().int(),
  daysClose: z.number().int(),
  daysOutside: z.number().int(),
  promisesMoved: z.number().int(),
  wishesLacking: z.number().int(),
  travelMin: z.number().int(),
  overtimeAndIdleMin: z.number().int(),
  imbalanceMin: z.number().int(),
});
export type PlanGoals = z.output<typeof goals>;

const proposal = z.strictObject({
  proposalId: id,
  mode: planMode,
  from: day,
  to: day,
  /** `stopped`: cancelled by a person; what had been found can be accepted all the same. */
  state: z.enum(['running', 'done', 'stopped', 'failed']),
  rounds: z.number().int(),
  elapsedMs: z.number().int(),
  seconds: z.number().int(),
  /** null until the first plan is there. */
  goals: goals.nullable(),
  /** Visits the plan places, moved or not. */
  placedCount: z.number().int(),
  moves: z.array(move),
  leftOut: z.array(leftOut),
  /** Sites and bases that are not on the map: ways to them are an assumption of so many minutes. */
  assumedWays: z.strictObject({ placeCount: z.number().int(), minutes: z.number().int() }),
  /** Days on which more people would need an instrument than there are in date. */
  shortages: z.array(domainValue<Shortage>()),
  staff: z.array(z.strictObject({ staffId: id, name: z.string() })),
});
export type Proposal = z.output<typeof proposal>;

const rangeErrors = {
  'range-in-past': z.strictObject({ today: day }),
  'range-too-long': z.strictObject({ mostDays: z.number().int() }),
  'dates-reversed': z.strictObject({ fromOn: day, toOn: day }),
} as const;

const slot = z.strictObject({
  staffId: id,
  name: z.string(),
  date: day,
  /** Within these two the arrival may be promised and the work begin, wall time. */
  fromMin: minuteOfDay,
  toMin: minuteOfDay,
  extraTravelMin: z.number().int(),
  /** As of a move: what speaks against this person and does not forbid it. */
  toWeigh: z.array(domainValue<Obstacle>()),
  /** Later than the latest day of the job. */
  isLate: z.boolean(),
  isAfterOther: z.boolean(),
  isBeforeOther: z.boolean(),
});
export type OfferedSlot = z.output<typeof slot>;

export const planningOperations = {
  'planning.propose': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({
      from: day,
      to: day,
      mode: planMode,
      /** Startups with an open blocking item get a pencilled visit; without it they are left waiting. */
      takesNotReady: z.boolean().default(false),
      seconds: z.number().int().min(1).max(120).default(10),
      /** The same number gives the same plan where rounds set the limit. */
      seed: z.number().int().min(0).max(2_147_483_647).default(1),
      maxRounds: z.number().int().min(0).max(1_000_000).nullable().default(null),
    }),
    output: z.strictObject({ proposalId: id }),
    errors: rangeErrors,
  }),
  'planning.status': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ proposalId: id }),
    output: proposal,
  }),
  'planning.cancel': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ proposalId: id }),
    output: nothing,
  }),
  /** All of it or nothing: refused when a visit or job it touches has changed since. */
  'planning.accept': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ proposalId: id }),
    output: z.strictObject({ moved: z.number().int(), booked: z.number().int() }),
    errors: {
      'proposal-running': nothing,
      'visit-begun': z.strictObject({ state: visitState }),
      'visit-changed': visitChanged,
      'job-changed': z.strictObject({ jobId: id }),
      /** Hours, absences, licences or other visits are not what they were. */
      'plan-outdated': z.strictObject({ problems: z.array(z.string()) }),
    },
  }),
  /** Undoes an accepted plan whole, as long as nobody has touched a visit of it since. */
  'planning.takeBack': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ proposalId: id }),
    output: z.strictObject({ movedBack: z.number().int(), cancelled: z.number().int() }),
    errors: { 'visit-changed': visitChanged, 'visit-begun': z.strictObject({ state: visitState }) },
  }),
  /** For the phone: where one more visit for this job fits, everything planned staying where it is. */
  'planning.slots': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      jobId: id,
      from: day,
      to: day,
      durationMin: z.number().int().min(1).max(5760).nullable().default(null),
      count: z.number().int().min(1).max(50).default(10),
    }),
    output: z.strictObject({
      durationMin: z.number().int(),
      slots: z.array(slot),
      /** Why there is none; empty when there are slots. */
      reasons: z.array(z.custom<LeftOutReason>(isReason)),
    }),
    errors: rangeErrors,
  }),
} as const;
