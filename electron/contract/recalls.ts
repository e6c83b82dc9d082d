/** Notices of makers and authorities: which appliances they are about, who was told, and what was done at each. */
import { z } from 'zod';
import { RECALL_OUTCOMES } from '../../domain/recalls/openNotices.ts';
import { RECALL_DOUBTS } from '../../domain/recalls/recallMatch.ts';
import { CHANNELS } from '../../domain/vocabulary/people.ts';
import { day, id, line, nothing, operation, optionalLine, words } from './operation.ts';
import { licenceProblem } from './visits.ts';

/** `open`: nothing settled yet. `doubtful`: it can't be told from the files. */
export const RECALL_SHOWS = ['open', 'doubtful', 'settled', 'all'] as const;

const altitude = z.number().min(-500).max(9000).nullable();

export const recallFields = z.strictObject({
  title: line,
  number: optionalLine,
  source: line,
  maker: line,
  /** Empty: every model. */
  models: z.array(line).max(200),
  /** Empty: every serial. Both ends belong to a range. */
  serialRanges: z.array(z.strictObject({ from: line, to: line })).max(500),
  altitudeMinM: altitude,
  altitudeMaxM: altitude,
  issuedOn: day,
  whatToDo: z.string().trim().min(1).max(4000),
  /** It informs, or asks for work at the next visit; otherwise nothing is lit before it is settled. */
  mayFire: z.boolean().default(false),
});
export type RecallFields = z.output<typeof recallFields>;

const counts = z.strictObject({
  /** Everything fits. */
  affected: z.number().int(),
  doubtful: z.number().int(),
  /** Of both: with nothing settled. */
  open: z.number().int(),
  told: z.number().int(),
});

const recallRow = recallFields.extend({ recallId: id, closedOn: day.nullable(), counts });
export type RecallRow = z.output<typeof recallRow>;

const affectedRow = z.strictObject({
  applianceId: id,
  maker: z.string(),
  model: z.string(),
  serial: z.string(),
  siteId: id.nullable(),
  street: z.string().nullable(),
  city: z.string().nullable(),
  altitudeM: z.number().nullable(),
  customerId: id.nullable(),
  customerName: z.string().nullable(),
  phone: z.string().nullable(),
  doubts: z.array(z.enum(RECALL_DOUBTS)),
  told: z.strictObject({ at: z.iso.datetime(), channel: z.string() }).nullable(),
  outcome: z.strictObject({ outcome: z.enum(RECALL_OUTCOMES), on: day, note: words }).nullable(),
});
export type AffectedRow = z.output<typeof affectedRow>;

export const recallOperations = {
  'recalls.list': operation({ access: 'signed-in', input: nothing, output: z.array(recallRow) }),
  /** Takes a notice down, or changes it. */
  'recalls.save': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ recallId: id.nullable(), recall: recallFields }),
    output: z.strictObject({ recallId: id }),
    errors: {
      'serial-range-unclear': z.strictObject({
        from: z.string(),
        to: z.string(),
        why: z.enum(['no-number', 'not-comparable', 'reversed']),
      }),
      'altitudes-reversed': nothing,
    },
  }),
  'recalls.get': operation({
    access: 'signed-in',
    input: z.strictObject({
      recallId: id,
      show: z.enum(RECALL_SHOWS).default('open'),
      limit: z.number().int().min(1).max(200).default(50),
      /** How many to leave out at the beginning. */
      after: z.number().int().min(0).default(0),
    }),
    output: z.strictObject({ recall: recallRow, rows: z.array(affectedRow), next: z.number().int().nullable() }),
  }),
  /**
   * What was done at one appliance; said again, the newer word counts. Done and not affected open the way to firing: they need
   * what was found, and somebody licensed for that appliance who did it or looked; where it may run meanwhile, anybody.
   */
  'recalls.settle': operation({
    access: ['owner', 'dispatcher', 'technician'],
    input: z.strictObject({
      recallId: id,
      applianceId: id,
      outcome: z.enum(RECALL_OUTCOMES),
      on: day,
      note: words,
      /** Who did it or looked; null: whoever writes it down. */
      byId: id.nullable().default(null),
    }),
    output: nothing,
    errors: { 'day-in-future': nothing, 'reason-missing': nothing, 'needs-licence': licenceProblem },
  }),
  /** That somebody was told in another way than by a message made here. */
  'recalls.noteTold': operation({
    access: ['owner', 'dispatcher', 'technician'],
    input: z.strictObject({ recallId: id, applianceId: id, channel: z.enum(CHANNELS), on: day, note: words }),
    output: nothing,
    errors: { 'day-in-future': nothing, 'no-owner-on-file': nothing },
  }),
  /** null: opened again. */
  'recalls.close': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ recallId: id, closedOn: day.nullable() }),
    output: nothing,
  }),
} as const;
