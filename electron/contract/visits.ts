/** From the booking to the signed record: jobs with their readiness, visits, and everything recorded in a run. */
import { z } from 'zod';
import { exportMapping } from '../../domain/intake/exportMapping.ts';
import { fuel, type ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { ProgressBlocker, StepLock } from '../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { QUANTITY_KEYS } from '../../domain/quantity/quantities.ts';
import type { Obstacle } from '../../domain/schedule/obstacles.ts';
import type { PastRun } from '../../domain/trend/pastRun.ts';
import { CREW_ROLES, JOB_KINDS, VISIT_OUTCOMES, VISIT_STATES } from '../../domain/vocabulary/work.ts';
import { day, id, instant, line, nothing, operation, optionalLine, words } from './operation.ts';
import { minuteOfDay } from './workforce.ts';

export const jobKind = z.enum(JOB_KINDS);
export const visitState = z.enum(VISIT_STATES);
export const visitOutcome = z.enum(VISIT_OUTCOMES);
export const wallTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'hours and minutes: 08:30');
export const crewRole = z.enum(CREW_ROLES);
const readinessAnswer = z.enum(['yes', 'no', 'unknown', 'not-applicable']);

/** Why somebody may not do gas work on this appliance on that day. */
export const licenceProblem = z.strictObject({
  staffId: id,
  name: z.string(),
  why: z.enum(['no-licence', 'not-valid-on-day', 'other-fuel', 'too-large']),
  on: day,
});

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
  /** Blocking readiness items not yet answered yes. */
  openReadiness: z.array(z.string()),
  openMakeSafes: z.number().int(),
  /** The visit that is to do it; one that ended without finishing it has given it back. */
  visitId: id.nullable(),
  /** How the visit before ended, when it has to be come back to. */
  returnBecause: visitOutcome.nullable(),
});

const crewMember = z.strictObject({ staffId: id, name: z.string(), role: crewRole });

/** Somebody else moved it meanwhile: what it is now. */
export const visitChanged = z.strictObject({
  revision: z.number().int(),
  plannedOn: day,
  startMin: minuteOfDay.nullable(),
  crew: z.array(z.string()),
});

export const visitRow = z.strictObject({
  visitId: id,
  siteId: id,
  street: z.string(),
  city: z.string(),
  customerId: id,
  customerName: z.string(),
  state: visitState,
  outcome: visitOutcome.nullable(),
  plannedOn: day,
  plannedFrom: wallTime.nullable(),
  plannedTo: wallTime.nullable(),
  durationMin: z.number().int(),
  /** When work is planned to begin; null: some time that day, or in the promised window. */
  startMin: minuteOfDay.nullable(),
  /** The day the customer was told; null: nobody was told yet. */
  promisedOn: day.nullable(),
  isTechnicianPinned: z.boolean(),
  isDayPinned: z.boolean(),
  isStartPinned: z.boolean(),
  /** What a change of the placement is based on. */
  revision: z.number().int(),
  crew: z.array(crewMember),
  jobs: z.array(
    z.strictObject({
      jobId: id,
      kind: jobKind,
      applianceId: id,
      serial: z.string(),
      model: z.string(),
      runId: id.nullable(),
      isSealed: z.boolean(),
      openMakeSafes: z.number().int(),
    }),
  ),
});
export type VisitRow = z.output<typeof visitRow>;

/** A run as the screens and the judgement need it. Findings and progress are computed from it by the domain, never stored. */
export const runView = z.strictObject({
  runId: id,
  visitId: id,
  visit: visitRow,
  record: z.custom<RunRecord>(isObject),
  sheet: z.custom<ModelSheet>(isObject),
  currentStepKey: z.string().nullable(),
  openedSteps: z.array(z.string()),
  reopenedAt: instant.nullable(),
  sealedSha256: z.string().nullable(),
  /** Everybody who may have measured or typed. */
  people: z.array(z.strictObject({ staffId: id, name: z.string(), isLicensed: z.boolean() })),
});
export type RunView = z.output<typeof runView>;

function isObject(value: unknown): boolean {
  return typeof value === 'object' && value !== null;
}

const blockers = z.strictObject({ blockers: z.array(z.custom<ProgressBlocker>(isObject)) });
const runRef = { visitId: id, runId: id };
const itemRef = { ...runRef, stepKey: z.string().max(100), itemKey: z.string().max(100) };
/** What every write into a run may answer. */
const runErrors = {
  'run-sealed': z.strictObject({ sealedAt: instant }),
  /** It ended without being finished: what is read now belongs to a return trip. */
  'visit-ended': z.strictObject({ outcome: visitOutcome, endedAt: instant.nullable() }),
  'step-not-open': z.strictObject({ stepKey: z.string() }),
  /** For hours, in a visit that never ended: it is taken up again first. */
  'run-was-left': nothing,
  'no-such-item': z.strictObject({ stepKey: z.string(), itemKey: z.string() }),
  'needs-licence': licenceProblem,
} as const;

export const visitOperations = {
  'jobs.open': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ applianceId: id, kind: jobKind, note: words }),
    output: z.strictObject({ jobId: id }),
  }),
  /** Jobs without a visit yet, or all of them. */
  'jobs.list': operation({
    access: 'signed-in',
    input: z.strictObject({ unplannedOnly: z.boolean().default(true), applianceId: id.nullable().default(null) }),
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
  /** Who may do this job on that day, and why the others may not or had better not. */
  'visits.whoMay': operation({
    access: 'signed-in',
    input: z.strictObject({
      jobIds: z.array(id).min(1),
      on: day,
      /** null: some time that day. */
      startMin: minuteOfDay.nullable().default(null),
      durationMin: z.number().int().min(1).max(5760).nullable().default(null),
    }),
    output: z.array(
      z.strictObject({
        staffId: id,
        name: z.string(),
        problem: licenceProblem.nullable(),
        /** Everything that speaks against it, what forbids it first. */
        obstacles: z.array(z.custom<Obstacle>(isObject)),
      }),
    ),
  }),
  'visits.book': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      jobIds: z.array(id).min(1).max(50),
      plannedOn: day,
      plannedFrom: wallTime.nullable(),
      plannedTo: wallTime.nullable(),
      durationMin: z.number().int().min(1).max(5760),
      crew: z.array(z.strictObject({ staffId: id, role: crewRole })).min(1),
      /** Pencilled: held in the diary while readiness is still open. */
      isPencilled: z.boolean(),
      startMin: minuteOfDay.nullable().default(null),
      /** The customer was told this day and window. */
      isPromised: z.boolean().default(false),
      note: words,
    }),
    output: z.strictObject({ visitId: id }),
    errors: {
      'readiness-open': z.strictObject({ items: z.array(z.strictObject({ jobId: id, itemKey: z.string() })) }),
      'needs-licence': licenceProblem,
      'jobs-on-several-sites': nothing,
      'times-reversed': z.strictObject({ plannedFrom: wallTime, plannedTo: wallTime }),
    },
  }),
  'visits.update': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      visitId: id,
      plannedOn: day,
      plannedFrom: wallTime.nullable(),
      plannedTo: wallTime.nullable(),
      durationMin: z.number().int().min(1).max(5760),
      crew: z.array(z.strictObject({ staffId: id, role: crewRole })).min(1),
      isPencilled: z.boolean(),
      /** Absent: stays as it is. */
      startMin: minuteOfDay.nullable().optional(),
      /** Of the visit as it was looked at; absent: whatever it is now. */
      baseRevision: z.number().int().optional(),
    }),
    output: nothing,
    errors: {
      'visit-changed': visitChanged,
      'readiness-open': z.strictObject({ items: z.array(z.strictObject({ jobId: id, itemKey: z.string() })) }),
      'needs-licence': licenceProblem,
      'visit-begun': z.strictObject({ state: visitState }),
      'times-reversed': z.strictObject({ plannedFrom: wallTime, plannedTo: wallTime }),
    },
  }),
  'visits.cancel': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ visitId: id, reason: line }),
    output: nothing,
    errors: { 'visit-begun': z.strictObject({ state: visitState }) },
  }),
  'visits.list': operation({
    access: 'signed-in',
    input: z.strictObject({ from: day, to: day, staffId: id.nullable().default(null) }),
    output: z.array(visitRow),
  }),
  'visits.get': operation({ access: 'signed-in', input: z.strictObject({ visitId: id }), output: visitRow }),
  /** Starts the visit and a run for each of its jobs, with the sheet revision it will keep. */
  'visits.begin': operation({
    access: ['technician', 'owner'],
    input: z.strictObject({ visitId: id }),
    output: z.strictObject({ runs: z.array(z.strictObject({ jobId: id, runId: id })) }),
    errors: {
      'no-sheet': z.strictObject({ applianceId: id, fuel: fuel.nullable() }),
      'fuel-unknown': z.strictObject({ applianceId: id }),
      'visit-cancelled': nothing,
      'needs-licence': licenceProblem,
    },
  }),
  /** Comes back to what a visit left open: its runs are taken up again, and what has grown too old is asked once more. */
  'visits.beginReturn': operation({
    access: ['technician', 'owner'],
    input: z.strictObject({ visitId: id }),
    output: z.strictObject({ visitId: id, runs: z.array(z.strictObject({ jobId: id, runId: id })) }),
    errors: {
      'no-return-needed': nothing,
      'no-sheet': z.strictObject({ applianceId: id, fuel: fuel.nullable() }),
      'fuel-unknown': z.strictObject({ applianceId: id }),
      'needs-licence': licenceProblem,
    },
  }),
  'visits.getRun': operation({ access: 'signed-in', input: z.strictObject(runRef), output: runView }),
  /** What earlier visits read on this appliance, oldest first: to compare with, never a value of this run. */
  'visits.getPast': operation({
    access: 'signed-in',
    input: z.strictObject({ runId: id }),
    output: z.array(z.custom<PastRun>(isObject)),
  }),
  /** Opens a step, or says which hold points stand in the way. The opened step is where a restart comes back to. */
  /** Work goes on in a run that was left for hours: what has grown too old meanwhile is asked again. Changes nothing where it was not. */
  'visits.takeUp': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject(runRef),
    output: z.strictObject({ reopenedAt: instant.nullable() }),
    errors: { 'run-sealed': runErrors['run-sealed'], 'visit-ended': runErrors['visit-ended'] },
  }),
  'visits.openStep': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ ...runRef, stepKey: z.string().max(100) }),
    output: nothing,
    errors: {
      'run-sealed': runErrors['run-sealed'],
      'step-locked': z.strictObject({ locks: z.array(z.custom<StepLock>(isObject)) }),
      'no-such-step': z.strictObject({ stepKey: z.string() }),
    },
  }),
  /** Kept beside what was answered before. A failed safety test is answered otherwise with a reason only by a licensed person. */
  'visits.answer': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({
      ...itemRef,
      value: z.string().max(4000).nullable(),
      reason: words,
      instrumentId: id.nullable().default(null),
    }),
    output: nothing,
    errors: {
      ...runErrors,
      'not-an-option': z.strictObject({ value: z.string() }),
      'must-be-possible': nothing,
      'witness-is-same': z.strictObject({ name: z.string() }),
    },
  }),
  /** Keeps the text and unit as typed beside the value. The same item, point and sample again replaces the earlier one, which stays on file. */
  'visits.recordReading': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({
      ...itemRef,
      quantity: z.enum(QUANTITY_KEYS as [string, ...string[]]),
      sample: z.number().int().min(1).max(99),
      typedText: z.string().max(60),
      typedUnit: z.string().max(20),
      notMeasuredReason: optionalLine,
      instrumentId: id.nullable(),
      measuredById: id.nullable(),
    }),
    output: z.strictObject({ readingId: id }),
    errors: {
      ...runErrors,
      /** What the parser said: empty, not a number, ambiguous, not possible in this unit … */
      'cannot-read': z.strictObject({ problem: z.custom<Readonly<Record<string, unknown>>>(isObject) }),
    },
  }),
  /**
   * Readings out of an instrument's own export, all of them or none. The file's times are kept where it has them; whoever
   * reads the file says what its columns mean, and the mapping is kept for the instrument.
   */
  'visits.importReadings': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({
      ...runRef,
      instrumentId: id,
      measuredById: id.nullable(),
      decimalSign: exportMapping.shape.decimalSign,
      readings: z
        .array(
          z.strictObject({
            stepKey: z.string().max(100),
            itemKey: z.string().max(100),
            quantity: z.enum(QUANTITY_KEYS as [string, ...string[]]),
            sample: z.number().int().min(1).max(99),
            typedText: z.string().max(60),
            typedUnit: z.string().max(20),
            measuredAt: instant.nullable(),
          }),
        )
        .min(1)
        .max(500),
    }),
    output: z.strictObject({ readingIds: z.array(id) }),
    errors: {
      ...runErrors,
      /** `position`: in the list that was sent, from 0. */
      'cannot-read-row': z.strictObject({
        position: z.number().int(),
        problem: z.custom<Readonly<Record<string, unknown>>>(isObject),
      }),
      'outside-the-visit': z.strictObject({ position: z.number().int(), measuredAt: instant }),
      'one-place-twice': z.strictObject({ position: z.number().int() }),
    },
  }),
  /** A part that was changed, from the sheet's list; it stands in the appliance's history at once. */
  'visits.addPart': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ ...itemRef, partKey: z.string().max(100), partNumber: line, serial: optionalLine }),
    output: z.strictObject({ fittedPartId: id }),
    errors: { ...runErrors, 'no-such-part': z.strictObject({ partKey: z.string() }) },
  }),
  /** One lockout, as told or as the control remembers it, with how cold it was outside if anybody knows. */
  'visits.addLockout': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({
      ...itemRef,
      happenedOn: day,
      /** On the site's clock. */
      happenedAt: wallTime,
      code: optionalLine,
      outdoorText: z.string().max(60).nullable(),
      outdoorUnit: z.string().max(20),
    }),
    output: z.strictObject({ lockoutId: id }),
    errors: {
      ...runErrors,
      'day-in-future': nothing,
      'cannot-read': z.strictObject({ problem: z.custom<Readonly<Record<string, unknown>>>(isObject) }),
    },
  }),
  /** Written down by mistake: it stays on file as removed. `rowId` of a part or a lockout of that item. */
  'visits.removeRow': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ ...itemRef, rowId: id }),
    output: nothing,
    errors: runErrors,
  }),
  /** Takes one suggestion of the judgement; refused when it asks for a new reading instead. */
  'visits.takeSuggestion': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ ...runRef, readingId: id, code: z.string().max(60) }),
    output: nothing,
    errors: { ...runErrors, 'no-such-suggestion': nothing, 'needs-new-reading': nothing },
  }),
  'visits.startHold': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject(itemRef),
    output: z.strictObject({ startedAt: instant }),
    errors: { ...runErrors, 'hold-running': z.strictObject({ startedAt: instant }) },
  }),
  'visits.endHold': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject(itemRef),
    output: z.strictObject({ isProven: z.boolean() }),
    errors: { ...runErrors, 'hold-not-over': z.strictObject({ leftS: z.number() }), 'hold-not-running': nothing },
  }),
  'visits.startTuning': operation({
    access: ['technician', 'owner'],
    input: z.strictObject(itemRef),
    output: z.strictObject({ startedAt: instant }),
    errors: { ...runErrors, 'tuning-running': z.strictObject({ startedAt: instant }) },
  }),
  'visits.reachTuningStage': operation({
    access: ['technician', 'owner'],
    input: z.strictObject({ ...itemRef, stageKey: z.string().max(100) }),
    output: nothing,
    errors: {
      ...runErrors,
      'tuning-not-running': nothing,
      'stage-out-of-order': z.strictObject({ expected: z.string().nullable() }),
    },
  }),
  'visits.finishTuning': operation({
    access: ['technician', 'owner'],
    input: z.strictObject(itemRef),
    output: nothing,
    errors: {
      ...runErrors,
      'tuning-not-running': nothing,
      'stages-missing': z.strictObject({ stages: z.array(z.string()) }),
    },
  }),
  /** Load lost or casing opened: it must be started again. */
  'visits.interruptTuning': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ ...itemRef, reason: line }),
    output: nothing,
    errors: { ...runErrors, 'tuning-not-running': nothing },
  }),
  'visits.reachFiringPoint': operation({
    access: ['technician', 'owner'],
    input: z.strictObject({ ...runRef, stepKey: z.string().max(100), firingPoint: z.string().max(100) }),
    output: z.strictObject({ reachedAt: instant }),
    errors: runErrors,
  }),
  'visits.attachPhoto': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ ...itemRef, attachmentId: id }),
    output: nothing,
    errors: runErrors,
  }),
  'visits.removePhoto': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ ...itemRef, attachmentId: id }),
    output: nothing,
    errors: runErrors,
  }),
  'visits.signOff': operation({
    access: ['technician', 'owner'],
    input: z.strictObject({ ...itemRef, name: line, signatureAttachmentId: id.nullable() }),
    output: nothing,
    errors: runErrors,
  }),
  'visits.finish': operation({
    access: ['technician', 'owner'],
    input: z.strictObject({
      visitId: id,
      outcome: visitOutcome,
      reason: words,
      labourMin: z.number().int().min(0).max(100_000).nullable(),
    }),
    output: nothing,
    errors: { 'leaving-blocked': blockers, 'not-begun': nothing, 'reason-missing': nothing, 'no-make-safe': nothing },
  }),
  /** Fixes the record: canonical JSON, its hash, chained to what the visit sealed before. */
  'visits.seal': operation({
    access: ['technician', 'owner'],
    input: z.strictObject(runRef),
    output: z.strictObject({ sha256: z.string(), sequence: z.number().int() }),
    errors: {
      'run-sealed': runErrors['run-sealed'],
      'leaving-blocked': blockers,
      'needs-licence': licenceProblem,
      'not-finished': nothing,
    },
  }),
  /** All that are open, wherever: one that is left out of a list is one that is lit. */
  'makeSafes.list': operation({
    access: 'signed-in',
    input: nothing,
    output: z.array(
      z.strictObject({
        makeSafeId: id,
        applianceId: id,
        serial: z.string(),
        maker: z.string(),
        model: z.string(),
        siteId: id,
        street: z.string(),
        city: z.string(),
        customerName: z.string(),
        what: z.string(),
        isolatedHow: z.string().nullable(),
        labelNumber: z.string().nullable(),
        toldWhom: z.string().nullable(),
        isRefused: z.boolean(),
        openedAt: instant,
        openedByName: z.string(),
      }),
    ),
  }),
  'makeSafes.open': operation({
    access: ['technician', 'helper', 'owner', 'dispatcher'],
    input: z.strictObject({ applianceId: id, visitId: id.nullable(), what: line }),
    output: z.strictObject({ makeSafeId: id }),
  }),
  'makeSafes.describe': operation({
    access: ['technician', 'helper', 'owner', 'dispatcher'],
    input: z.strictObject({
      makeSafeId: id,
      isolatedHow: optionalLine,
      labelNumber: optionalLine,
      toldWhom: optionalLine,
      deliveredHow: optionalLine,
      isRefused: z.boolean(),
    }),
    output: nothing,
    errors: { 'make-safe-closed': nothing },
  }),
  /** What was found, the shut valve, the label: also of one that is closed by now. */
  'makeSafes.attachPhoto': operation({
    access: ['technician', 'helper', 'owner', 'dispatcher'],
    input: z.strictObject({ makeSafeId: id, attachmentId: id }),
    output: nothing,
  }),
  'makeSafes.close': operation({
    access: ['technician', 'owner'],
    input: z.strictObject({ makeSafeId: id, reason: line }),
    output: nothing,
    errors: { 'make-safe-closed': nothing, 'needs-licence': licenceProblem },
  }),
} as const;
