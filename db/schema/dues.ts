/**
 * What falls due: two small truths (first-year contacts, owner changes told to the maker) and the derived tables that
 * lists are read from. The derived ones are caches: rebuilt from the truth at any time, never logged, never sent.
 */
import { index, integer, primaryKey, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { FIRST_YEAR_KINDS } from '../../domain/vocabulary/work.ts';
import { day, flag, instant, isDay, oneOf, primaryId } from './columns.ts';
import { staff } from './people.ts';
import { appliances } from './places.ts';

export const DUE_KINDS = ['registration', 'service', ...FIRST_YEAR_KINDS] as const;

/** The call and the look-in of a boiler's first year: made, or not wanted. */
export const firstYearContacts = sqliteTable(
  'first_year_contacts',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    kind: text('kind').notNull(),
    outcome: text('outcome').notNull(),
    on: day('happened_on').notNull(),
    note: text('note'),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
  },
  (t) => [
    uniqueIndex('first_year_contacts_once').on(t.applianceId, t.kind),
    oneOf('first_year_contacts_kind', t.kind, FIRST_YEAR_KINDS),
    oneOf('first_year_contacts_outcome', t.outcome, ['done', 'not-wanted']),
    isDay('first_year_contacts_on', t.on),
  ],
);

/** That the maker was told of a new owner. */
export const transferNotices = sqliteTable(
  'transfer_notices',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    changedOn: day('changed_on').notNull(),
    toldOn: day('told_on').notNull(),
    number: text('number'),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
  },
  (t) => [
    uniqueIndex('transfer_notices_once').on(t.applianceId, t.changedOn),
    isDay('transfer_notices_changed', t.changedOn),
    isDay('transfer_notices_told', t.toldOn),
  ],
);

/** Derived: one row for each thing that falls due at an appliance. Nothing in it depends on today. */
export const applianceDues = sqliteTable(
  'appliance_dues',
  {
    applianceId: text('appliance_id').notNull(),
    kind: text('kind').notNull(),
    isOpen: flag('is_open').notNull(),
    windowFrom: day('window_from').notNull(),
    dueOn: day('due_on').notNull(),
    latestOn: day('latest_on').notNull(),
    /** After this day nobody needs it any more; null: it stays until done. */
    goneOn: day('gone_on'),
    sureness: text('sureness').notNull(),
    /** Of a registration; null: another kind. */
    stage: text('stage'),
    /** The month of its round. */
    month: text('month').notNull(),
    area: text('area').notNull(),
    maker: text('maker').notNull(),
    staffId: text('staff_id'),
    timeZone: text('time_zone').notNull(),
    jobId: text('job_id'),
    visitId: text('visit_id'),
    bookedOn: day('booked_on'),
  },
  (t) => [
    primaryKey({ columns: [t.applianceId, t.kind] }),
    index('appliance_dues_by_day').on(t.kind, t.isOpen, t.dueOn, t.applianceId),
    index('appliance_dues_by_round').on(t.kind, t.isOpen, t.month, t.area),
    oneOf('appliance_dues_kind', t.kind, DUE_KINDS),
  ],
);

/** Derived: how much a packet still lacks. A row that is not there has to be counted again. */
export const registrationGaps = sqliteTable(
  'registration_gaps',
  {
    runId: text('run_id').primaryKey(),
    isSealed: flag('is_sealed').notNull(),
    gapCount: integer('gap_count').notNull(),
    countedAt: instant('counted_at').notNull(),
  },
  (t) => [index('registration_gaps_by_seal').on(t.isSealed)],
);

/** Derived: by which version of the rules a derived table was filled. */
export const derivedTables = sqliteTable('derived_tables', {
  name: text('name').primaryKey(),
  rulesVersion: integer('rules_version').notNull(),
});
