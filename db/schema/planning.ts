/** What planning the week needs: when people work, what else they can do, what a job asks for, and trips that were wasted. */
import { sql } from 'drizzle-orm';
import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import type { TravelPair } from '../../domain/schedule/travelTable.ts';
import { PHOTO_VIEWS, WASTED_TRIP_CODES } from '../../domain/vocabulary/work.ts';
import { day, flag, instant, isDay, isJson, json, oneOf, primaryId, rule } from './columns.ts';
import { staff } from './people.ts';
import { attachments } from './records.ts';
import { jobs, visits } from './work.ts';

/** Minutes from local midnight; 24:00 as an end is 1440. */
export const workingHours = sqliteTable(
  'working_hours',
  {
    id: primaryId(),
    staffId: text('staff_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    /** As in ISO 8601: 1 is Monday. */
    weekday: integer('weekday').notNull(),
    fromMin: integer('from_min').notNull(),
    toMin: integer('to_min').notNull(),
    breakFromMin: integer('break_from_min'),
    breakToMin: integer('break_to_min'),
  },
  (t) => [
    uniqueIndex('working_hours_once').on(t.staffId, t.weekday),
    rule('working_hours_weekday', sql`${t.weekday} BETWEEN 1 AND 7`),
    rule('working_hours_span', sql`${t.fromMin} >= 0 AND ${t.fromMin} < ${t.toMin} AND ${t.toMin} <= 1440`),
    rule('working_hours_break_whole', sql`(${t.breakFromMin} IS NULL) = (${t.breakToMin} IS NULL)`),
    rule(
      'working_hours_break_span',
      sql`${t.breakFromMin} IS NULL OR (${t.fromMin} <= ${t.breakFromMin} AND ${t.breakFromMin} < ${t.breakToMin} AND ${t.breakToMin} <= ${t.toMin})`,
    ),
  ],
);

/** Days off, illness, courses; `staffId` null: the whole firm is closed. Taken back rather than deleted. */
export const absences = sqliteTable(
  'absences',
  {
    id: primaryId(),
    staffId: text('staff_id').references(() => staff.id, { onDelete: 'restrict' }),
    fromOn: day('from_on').notNull(),
    toOn: day('to_on').notNull(),
    /** Only part of each of those days; both null: the whole day. */
    fromMin: integer('from_min'),
    toMin: integer('to_min'),
    reason: text('reason').notNull(),
    withdrawnAt: instant('withdrawn_at'),
  },
  (t) => [
    index('absences_by_day').on(t.toOn),
    isDay('absences_from', t.fromOn),
    isDay('absences_to', t.toOn),
    rule('absences_order', sql`${t.fromOn} <= ${t.toOn}`),
    rule('absences_part_whole', sql`(${t.fromMin} IS NULL) = (${t.toMin} IS NULL)`),
    rule(
      'absences_part_span',
      sql`${t.fromMin} IS NULL OR (${t.fromMin} >= 0 AND ${t.fromMin} < ${t.toMin} AND ${t.toMin} <= 1440)`,
    ),
  ],
);

/** What somebody can do beside licence and model training: cascades, oil, work on a ladder … in the firm's own words. */
export const staffSkills = sqliteTable(
  'staff_skills',
  {
    id: primaryId(),
    staffId: text('staff_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    skill: text('skill').notNull(),
  },
  (t) => [uniqueIndex('staff_skills_once').on(t.staffId, t.skill)],
);

export const jobSkills = sqliteTable(
  'job_skills',
  {
    id: primaryId(),
    jobId: text('job_id')
      .notNull()
      .references(() => jobs.id, { onDelete: 'restrict' }),
    skill: text('skill').notNull(),
  },
  (t) => [uniqueIndex('job_skills_once').on(t.jobId, t.skill)],
);

/** Photos asked for on the phone; the picture itself is an attachment of this row. */
export const photoRequests = sqliteTable(
  'photo_requests',
  {
    id: primaryId(),
    jobId: text('job_id')
      .notNull()
      .references(() => jobs.id, { onDelete: 'restrict' }),
    view: text('view').notNull(),
    askedWhom: text('asked_whom'),
    askedById: text('asked_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    askedAt: instant('asked_at').notNull(),
    receivedAt: instant('received_at'),
  },
  (t) => [uniqueIndex('photo_requests_once').on(t.jobId, t.view), oneOf('photo_requests_view', t.view, PHOTO_VIEWS)],
);

/** A trip that could not do its work: why, by a code that can be counted, and whether it is charged. */
export const wastedTrips = sqliteTable(
  'wasted_trips',
  {
    id: primaryId(),
    visitId: text('visit_id')
      .notNull()
      .references(() => visits.id, { onDelete: 'restrict' }),
    code: text('code').notNull(),
    isChargeable: flag('is_chargeable').notNull(),
    note: text('note'),
    recordedById: text('recorded_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    recordedAt: instant('recorded_at').notNull(),
  },
  (t) => [uniqueIndex('wasted_trips_once').on(t.visitId), oneOf('wasted_trips_code', t.code, WASTED_TRIP_CODES)],
);

/** Travel times the firm brought as a file; the newest that was not withdrawn counts. */
export const travelTables = sqliteTable(
  'travel_tables',
  {
    id: primaryId(),
    fileName: text('file_name').notNull(),
    attachmentId: text('attachment_id')
      .notNull()
      .references(() => attachments.id, { onDelete: 'restrict' }),
    pairs: json<readonly TravelPair[]>('pairs').notNull(),
    loadedById: text('loaded_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    loadedAt: instant('loaded_at').notNull(),
    withdrawnAt: instant('withdrawn_at'),
  },
  (t) => [index('travel_tables_by_load').on(t.loadedAt), isJson('travel_tables_pairs', t.pairs)],
);
