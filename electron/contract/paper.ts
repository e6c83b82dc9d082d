/** When the laptop cannot go on: what is left of a run on paper, and what was written there typed in afterwards, marked as copied. */
import { z } from 'zod';
import { QUANTITY_KEYS } from '../../domain/quantity/quantities.ts';
import { day, id, instant, line, nothing, operation, optionalLine, words } from './operation.ts';
import { licenceProblem, visitOutcome, wallTime } from './visits.ts';

const itemKey = z.string().max(100);

/** Times are times of day as they were written, to the minute. */
const written = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('answer'), value: z.string().max(4000).nullable(), reason: words, at: wallTime }),
  z.strictObject({
    kind: z.literal('reading'),
    quantity: z.enum(QUANTITY_KEYS as [string, ...string[]]),
    sample: z.number().int().min(1).max(99),
    typedText: z.string().max(60),
    typedUnit: z.string().max(20),
    notMeasuredReason: optionalLine,
    instrumentId: id.nullable(),
    at: wallTime,
  }),
  z.strictObject({ kind: z.literal('firing-point'), at: wallTime }),
  z.strictObject({ kind: z.literal('hold'), startedAt: wallTime, endedAt: wallTime }),
  z.strictObject({
    kind: z.literal('tuning'),
    startedAt: wallTime,
    stages: z.array(z.strictObject({ stageKey: z.string().max(100), at: wallTime })).max(50),
    finishedAt: wallTime,
  }),
  z.strictObject({ kind: z.literal('sign-off'), name: line, at: wallTime }),
  z.strictObject({
    kind: z.literal('part'),
    partKey: z.string().max(100),
    partNumber: line,
    serial: optionalLine,
    at: wallTime,
  }),
  z.strictObject({
    kind: z.literal('lockout'),
    happenedOn: day,
    happenedAt: wallTime,
    code: optionalLine,
    outdoorText: z.string().max(60).nullable(),
    outdoorUnit: z.string().max(20),
    /** When it was written down. */
    at: wallTime,
  }),
]);

export const paperOperations = {
  /** A PDF of everything that is still open, with limits, units and room to write. */
  'paper.print': operation({
    access: 'signed-in',
    input: z.strictObject({ visitId: id, runId: id }),
    output: z.strictObject({ attachmentId: id, openItems: z.number().int() }),
  }),
  /** `byId` measured or did it; whoever is signed in types it. The same checks hold as at the appliance. */
  'paper.transcribe': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({
      visitId: id,
      runId: id,
      stepKey: itemKey,
      itemKey,
      /** The day on the paper, at the site. */
      on: day,
      byId: id,
      written,
    }),
    output: nothing,
    errors: {
      'run-sealed': z.strictObject({ sealedAt: instant }),
      'visit-ended': z.strictObject({ outcome: visitOutcome, endedAt: instant.nullable() }),
      'step-not-open': z.strictObject({ stepKey: z.string() }),
      'run-was-left': nothing,
      'no-such-item': z.strictObject({ stepKey: z.string(), itemKey: z.string() }),
      'needs-licence': licenceProblem,
      'not-an-option': z.strictObject({ value: z.string() }),
      'must-be-possible': nothing,
      'witness-is-same': z.strictObject({ name: z.string() }),
      /** A licensed sign-off under a name that is not the one of whoever it was written by. */
      'signed-by-another': z.strictObject({ written: z.string(), name: z.string() }),
      'cannot-read': z.strictObject({ problem: z.record(z.string(), z.unknown()) }),
      'no-such-part': z.strictObject({ partKey: z.string() }),
      /** Of a lockout that is still to come. */
      'day-in-future': nothing,
      'stages-missing': z.strictObject({ stages: z.array(z.string()) }),
      /** Still to come, before the visit's day, or an end before its beginning. */
      'time-not-possible': z.strictObject({ on: day, at: wallTime }),
    },
  }),
} as const;
