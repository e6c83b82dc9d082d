/** Sealed records: what was amended and may be, and whether anything was altered behind their back. */
import { z } from 'zod';
import { VERDICTS } from '../../domain/judgement/finding.ts';
import { day, domainValue, id, instant, line, operation, optionalLine } from './operation.ts';
import { licenceProblem } from './visits.ts';

const judged = z.strictObject({ subject: z.string(), verdict: z.enum(VERDICTS) });

const pointer = z.string().startsWith('/').max(600);

export const recordOperations = {
  'records.getAmendments': operation({
    access: 'signed-in',
    input: z.strictObject({ runId: id }),
    output: z.strictObject({
      /** Oldest first. Values are empty where a person was erased. */
      amendments: z.array(
        z.strictObject({
          path: z.string().nullable(),
          what: z.string(),
          was: z.string().nullable(),
          isNow: z.string(),
          because: z.string(),
          /** What it puts outside its limit or at a stop. */
          judged: z.array(judged),
          byName: z.string(),
          at: instant,
        }),
      ),
      /** What an amendment can be about. */
      fields: z.array(z.strictObject({ path: z.string(), what: z.string(), says: z.string().nullable() })),
    }),
    errors: { 'not-sealed': z.strictObject({}) },
  }),
  /**
   * Adds a correction to the chain; what was sealed stays. A reading is judged anew: one that gets better by it needs a new
   * reading, one that is at a stop by it opens a make-safe. What the record says at `path` is taken from it, never from the
   * caller. `path` null: something the record has no place for, named by `what`.
   */
  'records.amend': operation({
    access: ['technician', 'owner'],
    input: z.strictObject({
      runId: id,
      path: pointer.nullable(),
      what: optionalLine,
      isNow: z.string().trim().min(1).max(2000),
      because: line,
    }),
    output: z.strictObject({
      sha256: z.string(),
      sequence: z.number().int(),
      judged: z.array(judged),
      /** Opened because the amendment puts something at a stop; null: it does not. */
      makeSafeId: id.nullable(),
    }),
    errors: {
      'not-sealed': z.strictObject({}),
      'no-such-field': z.strictObject({}),
      'nothing-amended': z.strictObject({}),
      'cannot-read': z.strictObject({ problem: domainValue<Readonly<Record<string, unknown>>>() }),
      'not-an-option': z.strictObject({ value: z.string() }),
      /** It would make a stop or an outside finding better. */
      'needs-new-reading': z.strictObject({}),
      'needs-licence': licenceProblem,
    },
  }),
  /** Recomputes the fingerprint and the chain of a visit's sealed records. */
  'records.verify': operation({
    access: 'signed-in',
    input: z.strictObject({ visitId: id }),
    output: z.strictObject({
      isIntact: z.boolean(),
      /** Of all records, not of this visit alone: days of which a sealed record is gone, was altered or came in later. */
      brokenDays: z.array(day),
      entries: z.array(
        z.strictObject({
          sequence: z.number().int(),
          kind: z.string(),
          sha256: z.string(),
          problems: z.array(
            z.strictObject({
              code: z.string(),
              /** Where, as far as the problem is about a place. */
              detail: z.string().nullable(),
            }),
          ),
          /** What differs from what the change log says was sealed. Empty: nothing, or the log cannot tell. */
          alterations: z.array(
            z.strictObject({ path: z.string(), was: z.string().nullable(), isNow: z.string().nullable() }),
          ),
        }),
      ),
    }),
  }),
} as const;
