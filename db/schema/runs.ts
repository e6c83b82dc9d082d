/** Runs (a job with its sheet revision and fuel) and all that is recorded in one. */
import { sql } from 'drizzle-orm';
import { index, integer, real, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { FUELS } from '../../domain/procedure/modelSheet.ts';
import { READING_ORIGINS } from '../../domain/vocabulary/work.ts';
import { day, flag, instant, isDay, oneOf, primaryId, rule } from './columns.ts';
import { instruments, parties, staff } from './people.ts';
import { appliances } from './places.ts';
import { sheetRevisions } from './sheets.ts';
import { jobs, visits } from './work.ts';

export const runs = sqliteTable(
  'runs',
  {
    id: primaryId(),
    jobId: text('job_id')
      .notNull()
      .references(() => jobs.id, { onDelete: 'restrict' }),
    sheetRevisionId: text('sheet_revision_id')
      .notNull()
      .references(() => sheetRevisions.id, { onDelete: 'restrict' }),
    fuel: text('fuel').notNull(),
    startedAt: instant('started_at').notNull(),
    reopenedAt: instant('reopened_at'),
    /** Where the technician stood: the same step opens again after a kill. */
    currentStepKey: text('current_step_key'),
    sealedAt: instant('sealed_at'),
  },
  (t) => [index('runs_by_job').on(t.jobId), oneOf('runs_fuel', t.fuel, FUELS)],
);

/** A step that was opened: its hold points were clear at that moment. */
export const runSteps = sqliteTable(
  'run_steps',
  {
    id: primaryId(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    stepKey: text('step_key').notNull(),
    openedAt: instant('opened_at').notNull(),
    openedById: text('opened_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
  },
  (t) => [uniqueIndex('run_steps_once').on(t.runId, t.stepKey)],
);

/** Append only: the newest answer of an item counts, and what was said before stays with who said it and when. */
export const runAnswers = sqliteTable(
  'run_answers',
  {
    id: primaryId(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    visitId: text('visit_id')
      .notNull()
      .references(() => visits.id, { onDelete: 'restrict' }),
    stepKey: text('step_key').notNull(),
    itemKey: text('item_key').notNull(),
    value: text('value'),
    reason: text('reason'),
    /** What a test was made with, where it takes an instrument. */
    instrumentId: text('instrument_id').references(() => instruments.id, { onDelete: 'restrict' }),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    at: instant('at').notNull(),
  },
  (t) => [
    index('run_answers_by_item').on(t.runId, t.itemKey),
    rule('run_answers_something', sql`${t.value} IS NOT NULL OR ${t.reason} IS NOT NULL`),
  ],
);

/** Append only: a correction is a new row that the old one points to. */
export const readings = sqliteTable(
  'readings',
  {
    id: primaryId(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    visitId: text('visit_id')
      .notNull()
      .references(() => visits.id, { onDelete: 'restrict' }),
    stepKey: text('step_key').notNull(),
    itemKey: text('item_key').notNull(),
    quantity: text('quantity').notNull(),
    point: text('point'),
    sample: integer('sample').notNull(),
    typedText: text('typed_text').notNull(),
    typedUnit: text('typed_unit').notNull(),
    /** In the unit that the quantity's own name carries; null: not measured, with a reason. */
    valueOwn: real('value_own'),
    comparator: text('comparator').notNull(),
    notMeasuredReason: text('not_measured_reason'),
    instrumentId: text('instrument_id').references(() => instruments.id, { onDelete: 'restrict' }),
    measuredById: text('measured_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    typedById: text('typed_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    measuredAt: instant('measured_at').notNull(),
    typedAt: instant('typed_at').notNull(),
    supersededById: text('superseded_by_id'),
    origin: text('origin').notNull(),
  },
  (t) => [
    /** The reading that stands for an item is looked for at every save. */
    index('readings_by_item').on(t.runId, t.itemKey, t.quantity, t.sample),
    oneOf('readings_comparator', t.comparator, ['=', '>', '<']),
    oneOf('readings_origin', t.origin, READING_ORIGINS),
    rule('readings_missing_is_not_zero', sql`(${t.valueOwn} IS NULL) = (${t.notMeasuredReason} IS NOT NULL)`),
    rule('readings_sample', sql`${t.sample} >= 1`),
  ],
);

/** A wait is its stored start; what is left is computed. `startedSteadyMs` is the machine's steady clock, to notice a jump. */
export const runHolds = sqliteTable(
  'run_holds',
  {
    id: primaryId(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    itemKey: text('item_key').notNull(),
    startedAt: instant('started_at').notNull(),
    requiredS: integer('required_s').notNull(),
    endedAt: instant('ended_at'),
    hasClockJumped: flag('has_clock_jumped').notNull(),
    bootId: text('boot_id').notNull(),
    startedSteadyMs: real('started_steady_ms').notNull(),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
  },
  (t) => [index('run_holds_by_run').on(t.runId, t.itemKey), rule('run_holds_required', sql`${t.requiredS} > 0`)],
);

export const runTunings = sqliteTable(
  'run_tunings',
  {
    id: primaryId(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    itemKey: text('item_key').notNull(),
    startedAt: instant('started_at').notNull(),
    finishedAt: instant('finished_at'),
    interruptedAt: instant('interrupted_at'),
    interruptedReason: text('interrupted_reason'),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
  },
  (t) => [
    index('run_tunings_by_run').on(t.runId, t.itemKey),
    rule('run_tunings_one_end', sql`${t.finishedAt} IS NULL OR ${t.interruptedAt} IS NULL`),
  ],
);

export const tuningStages = sqliteTable(
  'tuning_stages',
  {
    id: primaryId(),
    tuningId: text('tuning_id')
      .notNull()
      .references(() => runTunings.id, { onDelete: 'restrict' }),
    stageKey: text('stage_key').notNull(),
    reachedAt: instant('reached_at').notNull(),
  },
  (t) => [uniqueIndex('tuning_stages_once').on(t.tuningId, t.stageKey)],
);

/** When the burner reached a firing point; each time again after an adjustment. */
export const firingPointMarks = sqliteTable(
  'firing_point_marks',
  {
    id: primaryId(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    firingPoint: text('firing_point').notNull(),
    reachedAt: instant('reached_at').notNull(),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
  },
  (t) => [index('firing_point_marks_by_run').on(t.runId)],
);

/** When it locked out, as told or as the control remembers it. One written down by mistake is removed, and stays on file. */
export const runLockouts = sqliteTable(
  'run_lockouts',
  {
    id: primaryId(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    itemKey: text('item_key').notNull(),
    happenedAt: instant('happened_at').notNull(),
    code: text('code'),
    outdoorTypedText: text('outdoor_typed_text'),
    outdoorTypedUnit: text('outdoor_typed_unit'),
    outdoorC: real('outdoor_c'),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    recordedAt: instant('recorded_at').notNull(),
    removedAt: instant('removed_at'),
  },
  (t) => [index('run_lockouts_by_run').on(t.runId)],
);

export const signOffs = sqliteTable(
  'sign_offs',
  {
    id: primaryId(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    itemKey: text('item_key').notNull(),
    by: text('by').notNull(),
    name: text('name').notNull(),
    staffId: text('staff_id').references(() => staff.id, { onDelete: 'restrict' }),
    partyId: text('party_id').references(() => parties.id, { onDelete: 'restrict' }),
    at: instant('at').notNull(),
    signatureAttachmentId: text('signature_attachment_id'),
  },
  (t) => [uniqueIndex('sign_offs_once').on(t.runId, t.itemKey), oneOf('sign_offs_by', t.by, ['licensed', 'occupant'])],
);

export const TRANSCRIBED_ENTITIES = [
  'run_answers',
  'run_holds',
  'run_tunings',
  'firing_point_marks',
  'sign_offs',
] as const;

/** What was copied from paper afterwards: who did it and when is in the row itself, who typed it and when is here. Readings say so themselves. */
export const transcriptions = sqliteTable(
  'transcriptions',
  {
    id: primaryId(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    entity: text('entity').notNull(),
    rowId: text('row_id').notNull(),
    typedById: text('typed_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    typedAt: instant('typed_at').notNull(),
  },
  (t) => [
    index('transcriptions_by_run').on(t.runId),
    uniqueIndex('transcriptions_once').on(t.entity, t.rowId),
    oneOf('transcriptions_entity', t.entity, TRANSCRIBED_ENTITIES),
  ],
);

export const fittedParts = sqliteTable(
  'fitted_parts',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    visitId: text('visit_id').references(() => visits.id, { onDelete: 'restrict' }),
    partNumber: text('part_number').notNull(),
    name: text('name').notNull(),
    serial: text('serial'),
    fittedOn: day('fitted_on').notNull(),
    coverFrom: day('cover_from'),
    /** On which run, in answer to which item, and which of its sheet's parts; null: noted down without one. */
    runId: text('run_id').references(() => runs.id, { onDelete: 'restrict' }),
    itemKey: text('item_key'),
    partKey: text('part_key'),
    recordedById: text('recorded_by_id').references(() => staff.id, { onDelete: 'restrict' }),
    recordedAt: instant('recorded_at'),
    removedAt: instant('removed_at'),
  },
  (t) => [
    index('fitted_parts_by_appliance').on(t.applianceId),
    index('fitted_parts_by_run').on(t.runId),
    isDay('fitted_parts_on', t.fittedOn),
  ],
);
