/** Everything recorded in a run, from its first step to the sealed record. */
import { z } from 'zod';
import { exportMapping } from '../../domain/intake/exportMapping.ts';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { ProgressBlocker, StepLock } from '../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { QUANTITY_KEYS } from '../../domain/quantity/quantities.ts';
import type { PastRun } from '../../domain/trend/pastRun.ts';
import { day, domainValue, id, instant, line, nothing, operation, optionalLine, words } from './operation.ts';
import { licenceProblem, visitOutcome, visitRow, wallTime } from './visits.ts';

/** A run as the screens and the judgement need it. Findings and progress are computed from it by the domain, never stored. */
export const runView = z.strictObject({
  runId: id,
  visitId: id,
  visit: visitRow,
  record: domainValue<RunRecord>(),
  sheet: domainValue<ModelSheet>(),
  currentStepKey: z.string().nullable(),
  openedSteps: z.array(z.string()),
  reopenedAt: instant.nullable(),
  sealedSha256: z.string().nullable(),
  /** Everybody who may have measured or typed. */
  people: z.array(
    z.strictObject({ staffId: id, name: z.string(), isLicensed: z.boolean(), waitsForRating: z.boolean() }),
  ),
});
export type RunView = z.output<typeof runView>;

const blockers = z.strictObject({ blockers: z.array(domainValue<ProgressBlocker>()) });
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

export const runOperations = {
  'visits.getRun': operation({ access: 'signed-in', input: z.strictObject(runRef), output: runView }),
  /** What earlier visits read on this appliance, oldest first: to compare with, never a value of this run. */
  'visits.getPast': operation({
    access: 'signed-in',
    input: z.strictObject({ runId: id }),
    output: z.array(domainValue<PastRun>()),
  }),
  /** Work goes on in a run that was left for hours: what has grown too old meanwhile is asked again. Changes nothing where it was not. */
  'visits.takeUp': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject(runRef),
    output: z.strictObject({ reopenedAt: instant.nullable() }),
    errors: { 'run-sealed': runErrors['run-sealed'], 'visit-ended': runErrors['visit-ended'] },
  }),
  /** Opens a step, or says which hold points stand in the way. The opened step is where a restart comes back to. */
  'visits.openStep': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ ...runRef, stepKey: z.string().max(100) }),
    output: nothing,
    errors: {
      'run-sealed': runErrors['run-sealed'],
      'step-locked': z.strictObject({ locks: z.array(domainValue<StepLock>()) }),
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
      'cannot-read': z.strictObject({ problem: domainValue<Readonly<Record<string, unknown>>>() }),
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
        problem: domainValue<Readonly<Record<string, unknown>>>(),
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
      'cannot-read': z.strictObject({ problem: domainValue<Readonly<Record<string, unknown>>>() }),
    },
  }),
  /** Written down by mistake: it stays on file as removed. `rowId` of a part or a lockout of that item. */
  'visits.removeRow': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ ...itemRef, rowId: id }),
    output: nothing,
    errors: runErrors,
  }),
  /** The rated input as the plate says it, where the appliance's file has none: a licence with an upper limit waits for it. */
  'visits.recordPlateRating': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({
      ...runRef,
      typedText: z.string().max(60),
      typedUnit: z.string().max(20),
      basis: z.enum(['gross', 'net']),
    }),
    output: z.strictObject({ ratedInputKw: z.number() }),
    errors: {
      'run-sealed': runErrors['run-sealed'],
      'visit-ended': runErrors['visit-ended'],
      'cannot-read': z.strictObject({ problem: domainValue<Readonly<Record<string, unknown>>>() }),
      'rating-on-file': z.strictObject({ ratedInputKw: z.number() }),
    },
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
    errors: {
      'leaving-blocked': blockers,
      'not-begun': nothing,
      'reason-missing': nothing,
      'no-make-safe': nothing,
      'visit-ended': runErrors['visit-ended'],
    },
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
} as const;
