/** Work that is to be done on an appliance, and whether its site is ready for it. */
import { z } from 'zod';
import { agedAnswer } from './agedAnswer.ts';
import { priority } from './board.ts';
import { openNotice } from './openNotice.ts';
import { day, id, instant, nothing, operation, optionalLine, words } from './operation.ts';
import { jobKind, visitOutcome } from './visits.ts';

const readinessAnswer = z.enum(['yes', 'no', 'unknown', 'not-applicable']);

const jobRow = z.strictObject({
  jobId: id,
  kind: jobKind,
  applianceId: id,
  serial: z.string(),
  maker: z.string(),
  model: z.string(),
  siteId: id.nullable(),
  customerName: z.string().nullable(),
  street: z.string().nullable(),
  city: z.string().nullable(),
  openedAt: instant,
  priority,
  wantedToOn: day.nullable(),
  latestOn: day.nullable(),
  latestWhy: optionalLine,
  /** Blocking readiness items not yet answered yes. */
  openReadiness: z.array(z.string()),
  agedReadiness: z.array(agedAnswer),
  openMakeSafes: z.number().int(),
  openNotices: z.array(openNotice),
  /** The visit that is to do it; one that ended without finishing it has given it back. */
  visitId: id.nullable(),
  /** How the visit before ended, when it has to be come back to. */
  returnBecause: visitOutcome.nullable(),
});

export const jobOperations = {
  'jobs.open': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ applianceId: id, kind: jobKind, note: words }),
    output: z.strictObject({ jobId: id }),
    /** A boiler is started up once at a time. */
    errors: { 'not-standing': nothing, 'startup-open': z.strictObject({ jobId: id }) },
  }),
  /**
   * Jobs without a visit yet, what presses first; or all of an appliance, or these ones, the newest first. Never every job
   * there ever was: an old firm has tens of thousands.
   */
  'jobs.list': operation({
    access: 'signed-in',
    input: z
      .strictObject({
        unplannedOnly: z.boolean().default(true),
        applianceId: id.nullable().default(null),
        jobIds: z.array(id).max(100).optional(),
      })
      .refine(
        ({ unplannedOnly, applianceId, jobIds }) => unplannedOnly || applianceId !== null || jobIds !== undefined,
        'name the appliance or the jobs',
      ),
    output: z.array(jobRow),
  }),
  'jobs.getReadiness': operation({
    access: 'signed-in',
    input: z.strictObject({ jobId: id }),
    output: z.strictObject({
      jobId: id,
      items: z.array(
        z.strictObject({
          itemKey: z.string(),
          answer: readinessAnswer.nullable(),
          note: words,
          confirmedBy: optionalLine,
          recordedByName: z.string().nullable(),
          recordedAt: instant.nullable(),
        }),
      ),
      aged: z.array(agedAnswer),
      /** Connected gas loads against what the meter can give; null when the latter or every load is unknown. */
      gasLoad: z
        .strictObject({
          loadKw: z.number(),
          capacityKw: z.number(),
          /** Connected as well, but nobody knows with how much: the sum is at least what it says. */
          unknownLoads: z.array(z.string()),
        })
        .nullable(),
    }),
  }),
  'jobs.setReadiness': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      jobId: id,
      itemKey: z.string().max(100),
      answer: readinessAnswer,
      note: words,
      confirmedBy: optionalLine,
    }),
    output: nothing,
    errors: { 'no-such-item': z.strictObject({ stepKey: z.string(), itemKey: z.string() }) },
  }),
  /** Asked again today, and all of it is as it was: each answer keeps its words and is as fresh as today. */
  'jobs.askedAgain': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      answers: z
        .array(z.strictObject({ jobId: id, itemKey: z.string().max(100) }))
        .min(1)
        .max(500),
    }),
    output: nothing,
    errors: { 'no-such-item': z.strictObject({ stepKey: z.string(), itemKey: z.string() }) },
  }),
} as const;
