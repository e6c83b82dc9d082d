/**
 * The work: jobs (the startup of one appliance, a service, a repair), visits (one trip), and what was made safe. Jobs and visits
 * are many to many: cascades, two-day startups and several boilers in one trip need it.
 */
import { sql } from 'drizzle-orm';
import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { CREW_ROLES, JOB_KINDS, VISIT_STATES } from '../../domain/vocabulary/work.ts';
import { day, flag, instant, isDay, oneOf, primaryId, rule } from './columns.ts';
import { staff } from './people.ts';
import { appliances, sites } from './places.ts';

export const jobs = sqliteTable(
  'jobs',
  {
    id: primaryId(),
    kind: text('kind').notNull(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    openedAt: instant('opened_at').notNull(),
    closedAt: instant('closed_at'),
    isChargeable: flag('is_chargeable').notNull(),
    chargeReason: text('charge_reason'),
    outsideInvoiceNumber: text('outside_invoice_number'),
    outsideInvoiceOn: day('outside_invoice_on'),
    note: text('note'),
    /** 0 can wait … 3 before everything else. */
    priority: integer('priority').notNull().default(1),
    /** The days that suit, and the day after which it is too late, with what makes it so. */
    wantedFromOn: day('wanted_from_on'),
    wantedToOn: day('wanted_to_on'),
    latestOn: day('latest_on'),
    latestWhy: text('latest_why'),
    /** Minutes on site when they differ from what the kind and model suggest. */
    expectedMin: integer('expected_min'),
  },
  (t) => [
    index('jobs_by_appliance').on(t.applianceId),
    oneOf('jobs_kind', t.kind, JOB_KINDS),
    isDay('jobs_invoice_on', t.outsideInvoiceOn),
  ],
);

export const visits = sqliteTable(
  'visits',
  {
    id: primaryId(),
    siteId: text('site_id')
      .notNull()
      .references(() => sites.id, { onDelete: 'restrict' }),
    state: text('state').notNull(),
    /** Wall time in the site's zone. `plannedFrom` to `plannedTo` is the window in which the arrival was promised. */
    plannedOn: day('planned_on').notNull(),
    plannedFrom: text('planned_from'),
    plannedTo: text('planned_to'),
    durationMin: integer('duration_min').notNull(),
    startedAt: instant('started_at'),
    endedAt: instant('ended_at'),
    outcome: text('outcome'),
    outcomeReason: text('outcome_reason'),
    labourMin: integer('labour_min'),
    note: text('note'),
    /** When work is planned to begin, minutes from midnight of the site's zone; null: some time that day. */
    startMin: integer('start_min'),
    /** What a planner may not change, each separately. */
    isTechnicianPinned: flag('is_technician_pinned').notNull().default(false),
    isDayPinned: flag('is_day_pinned').notNull().default(false),
    isStartPinned: flag('is_start_pinned').notNull().default(false),
    /** The day the customer was told; null: nobody was told yet. */
    promisedOn: day('promised_on'),
    /** Grows with each change of day, time, people or state: the base version of a write, and the sequence in calendars. */
    revision: integer('revision').notNull().default(0),
  },
  (t) => [
    index('visits_by_day').on(t.plannedOn),
    index('visits_by_site').on(t.siteId),
    oneOf('visits_state', t.state, VISIT_STATES),
    rule(
      'visits_outcome',
      sql`${t.outcome} IS NULL OR ${t.outcome} IN ('finished', 'return-needed', 'site-not-ready', 'made-safe')`,
    ),
    isDay('visits_planned_on', t.plannedOn),
    rule('visits_duration', sql`${t.durationMin} BETWEEN 1 AND 5760`),
    rule('visits_from', sql`${t.plannedFrom} IS NULL OR ${t.plannedFrom} GLOB '[0-2][0-9]:[0-5][0-9]'`),
    rule('visits_to', sql`${t.plannedTo} IS NULL OR ${t.plannedTo} GLOB '[0-2][0-9]:[0-5][0-9]'`),
  ],
);

export const visitJobs = sqliteTable(
  'visit_jobs',
  {
    id: primaryId(),
    visitId: text('visit_id')
      .notNull()
      .references(() => visits.id, { onDelete: 'restrict' }),
    jobId: text('job_id')
      .notNull()
      .references(() => jobs.id, { onDelete: 'restrict' }),
  },
  (t) => [uniqueIndex('visit_jobs_once').on(t.visitId, t.jobId), index('visit_jobs_by_job').on(t.jobId)],
);

export const visitCrew = sqliteTable(
  'visit_crew',
  {
    id: primaryId(),
    visitId: text('visit_id')
      .notNull()
      .references(() => visits.id, { onDelete: 'restrict' }),
    staffId: text('staff_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    role: text('role').notNull(),
    onSiteFrom: instant('on_site_from'),
    onSiteTo: instant('on_site_to'),
  },
  (t) => [
    uniqueIndex('visit_crew_once').on(t.visitId, t.staffId),
    index('visit_crew_by_staff').on(t.staffId),
    oneOf('visit_crew_role', t.role, CREW_ROLES),
  ],
);

/** What the site must have before a startup is booked: who confirmed what, and when. */
export const readinessAnswers = sqliteTable(
  'readiness_answers',
  {
    id: primaryId(),
    jobId: text('job_id')
      .notNull()
      .references(() => jobs.id, { onDelete: 'restrict' }),
    itemKey: text('item_key').notNull(),
    answer: text('answer').notNull(),
    note: text('note'),
    confirmedBy: text('confirmed_by'),
    recordedById: text('recorded_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    recordedAt: instant('recorded_at').notNull(),
  },
  (t) => [
    uniqueIndex('readiness_answers_once').on(t.jobId, t.itemKey),
    oneOf('readiness_answers_answer', t.answer, ['yes', 'no', 'unknown', 'not-applicable']),
  ],
);

/** Open until a licensed person closes it with a reason; first on the appliance, the site and every list. */
export const makeSafes = sqliteTable(
  'make_safes',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    siteId: text('site_id')
      .notNull()
      .references(() => sites.id, { onDelete: 'restrict' }),
    visitId: text('visit_id').references(() => visits.id, { onDelete: 'restrict' }),
    what: text('what').notNull(),
    isolatedHow: text('isolated_how'),
    labelNumber: text('label_number'),
    toldWhom: text('told_whom'),
    deliveredHow: text('delivered_how'),
    isRefused: flag('is_refused').notNull(),
    openedById: text('opened_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    openedAt: instant('opened_at').notNull(),
    closedById: text('closed_by_id').references(() => staff.id, { onDelete: 'restrict' }),
    closedAt: instant('closed_at'),
    closedReason: text('closed_reason'),
  },
  (t) => [
    index('make_safes_by_appliance').on(t.applianceId),
    rule('make_safes_closing', sql`(${t.closedAt} IS NULL) = (${t.closedReason} IS NULL)`),
  ],
);
