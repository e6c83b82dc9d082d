/** The office's round: what was imported, what was prepared for people and what came of it, recalls, packets built in bulk. */
import { sql } from 'drizzle-orm';
import { index, integer, real, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { WRITTEN_CHANNELS } from '../../domain/messages/messageKinds.ts';
import { CHANNELS, LANGUAGES } from '../../domain/vocabulary/people.ts';
import { LIST_WORK_KINDS } from '../../domain/vocabulary/work.ts';
import { day, flag, instant, isDay, isJson, json, oneOf, primaryId, rule } from './columns.ts';
import { parties, staff } from './people.ts';
import { appliances } from './places.ts';
import { attachments } from './records.ts';
import { runs } from './runs.ts';
import { visits } from './work.ts';

/** One file taken in as one transaction; what it wrote is a span of the change log, which undoing reads back. */
export const imports = sqliteTable(
  'imports',
  {
    id: primaryId(),
    fileName: text('file_name').notNull(),
    attachmentId: text('attachment_id')
      .notNull()
      .references(() => attachments.id, { onDelete: 'restrict' }),
    mapping: json<unknown>('mapping').notNull(),
    counts: json<Readonly<Record<string, number>>>('counts').notNull(),
    deviceId: text('device_id').notNull(),
    incarnation: text('incarnation').notNull(),
    firstSeq: integer('first_seq').notNull(),
    lastSeq: integer('last_seq').notNull(),
    importedById: text('imported_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    importedAt: instant('imported_at').notNull(),
    undoneById: text('undone_by_id').references(() => staff.id, { onDelete: 'restrict' }),
    undoneAt: instant('undone_at'),
  },
  (t) => [
    isJson('imports_mapping', t.mapping),
    isJson('imports_counts', t.counts),
    rule('imports_span', sql`${t.firstSeq} <= ${t.lastSeq}`),
    rule('imports_undone', sql`(${t.undoneAt} IS NULL) = (${t.undoneById} IS NULL)`),
  ],
);

/**
 * A list that is just being taken in or out. The write that does it takes this row away with it: what is found at a start was
 * cut off, and nothing of it was written.
 */
export const listWorks = sqliteTable(
  'list_works',
  {
    id: primaryId(),
    kind: text('kind').notNull(),
    fileName: text('file_name').notNull(),
    begunById: text('begun_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    begunAt: instant('begun_at').notNull(),
  },
  (t) => [oneOf('list_works_kind', t.kind, LIST_WORK_KINDS)],
);

/** `appointment`: that it is booked. */
export const MESSAGE_KINDS = [
  'service-due',
  'first-year',
  'appointment',
  'appointment-reminder',
  'on-the-way',
  'registration',
  'recall',
] as const;
export const MESSAGE_EVENTS = ['sent', 'bounced', 'answered', 'withdrawn'] as const;

/** Wording of the firm's own; without a row the built-in wording is used. */
export const messageTemplates = sqliteTable(
  'message_templates',
  {
    id: primaryId(),
    kind: text('kind').notNull(),
    channel: text('channel').notNull(),
    language: text('language').notNull(),
    subject: text('subject').notNull(),
    body: text('body').notNull(),
    updatedById: text('updated_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    updatedAt: instant('updated_at').notNull(),
  },
  (t) => [
    uniqueIndex('message_templates_once').on(t.kind, t.channel, t.language),
    oneOf('message_templates_kind', t.kind, MESSAGE_KINDS),
    oneOf('message_templates_channel', t.channel, WRITTEN_CHANNELS),
    oneOf('message_templates_language', t.language, LANGUAGES),
  ],
);

/** A maker's or authority's notice: which models, serials and altitudes it is about. */
export const recalls = sqliteTable(
  'recalls',
  {
    id: primaryId(),
    title: text('title').notNull(),
    number: text('number'),
    source: text('source').notNull(),
    maker: text('maker').notNull(),
    /** Empty: every model of the maker. */
    models: json<readonly string[]>('models').notNull(),
    /** Empty: every serial. Both ends belong to a range. */
    serialRanges: json<readonly { readonly from: string; readonly to: string }[]>('serial_ranges').notNull(),
    altitudeMinM: real('altitude_min_m'),
    altitudeMaxM: real('altitude_max_m'),
    issuedOn: day('issued_on').notNull(),
    /** What the notice asks for, in its own words. */
    whatToDo: text('what_to_do').notNull(),
    /** It informs, or asks for work at the next visit; otherwise nothing may be lit before it is settled. */
    mayFire: flag('may_fire').notNull().default(false),
    closedOn: day('closed_on'),
    addedById: text('added_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    addedAt: instant('added_at').notNull(),
  },
  (t) => [
    isJson('recalls_models', t.models),
    isJson('recalls_serial_ranges', t.serialRanges),
    isDay('recalls_issued', t.issuedOn),
    isDay('recalls_closed', t.closedOn),
    rule(
      'recalls_altitude',
      sql`${t.altitudeMinM} IS NULL OR ${t.altitudeMaxM} IS NULL OR ${t.altitudeMinM} <= ${t.altitudeMaxM}`,
    ),
  ],
);

/** What was done about a recall at one appliance. */
export const recallOutcomes = sqliteTable(
  'recall_outcomes',
  {
    id: primaryId(),
    recallId: text('recall_id')
      .notNull()
      .references(() => recalls.id, { onDelete: 'restrict' }),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    outcome: text('outcome').notNull(),
    on: day('happened_on').notNull(),
    note: text('note'),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
  },
  (t) => [
    uniqueIndex('recall_outcomes_once').on(t.recallId, t.applianceId),
    index('recall_outcomes_by_appliance').on(t.applianceId),
    oneOf('recall_outcomes_outcome', t.outcome, ['done', 'not-affected', 'refused']),
    isDay('recall_outcomes_on', t.on),
  ],
);

/** What was written for somebody, word for word as it was prepared. */
export const messages = sqliteTable(
  'messages',
  {
    id: primaryId(),
    kind: text('kind').notNull(),
    channel: text('channel').notNull(),
    language: text('language').notNull(),
    partyId: text('party_id')
      .notNull()
      .references(() => parties.id, { onDelete: 'restrict' }),
    applianceId: text('appliance_id').references(() => appliances.id, { onDelete: 'restrict' }),
    visitId: text('visit_id').references(() => visits.id, { onDelete: 'restrict' }),
    recallId: text('recall_id').references(() => recalls.id, { onDelete: 'restrict' }),
    /** The day it is about: the service's due day, the visit's day. */
    aboutOn: day('about_on'),
    subject: text('subject').notNull(),
    body: text('body').notNull(),
    attachmentId: text('attachment_id').references(() => attachments.id, { onDelete: 'restrict' }),
    preparedById: text('prepared_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    preparedAt: instant('prepared_at').notNull(),
  },
  (t) => [
    index('messages_by_appliance').on(t.applianceId),
    index('messages_by_party').on(t.partyId),
    index('messages_by_time').on(t.preparedAt),
    oneOf('messages_kind', t.kind, MESSAGE_KINDS),
    oneOf('messages_channel', t.channel, CHANNELS),
    oneOf('messages_language', t.language, LANGUAGES),
    isDay('messages_about', t.aboutOn),
  ],
);

export const messageEvents = sqliteTable(
  'message_events',
  {
    id: primaryId(),
    messageId: text('message_id')
      .notNull()
      .references(() => messages.id, { onDelete: 'restrict' }),
    kind: text('kind').notNull(),
    on: day('happened_on').notNull(),
    note: text('note'),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    at: instant('at').notNull(),
  },
  (t) => [
    index('message_events_by_message').on(t.messageId),
    oneOf('message_events_kind', t.kind, MESSAGE_EVENTS),
    isDay('message_events_on', t.on),
  ],
);

/** Packets built one after the other; stopping and going on again needs nothing but these rows. */
export const packetBatches = sqliteTable('packet_batches', {
  id: primaryId(),
  isDraft: flag('is_draft').notNull(),
  startedById: text('started_by_id')
    .notNull()
    .references(() => staff.id, { onDelete: 'restrict' }),
  startedAt: instant('started_at').notNull(),
  cancelledAt: instant('cancelled_at'),
});

export const packetBatchItems = sqliteTable(
  'packet_batch_items',
  {
    id: primaryId(),
    batchId: text('batch_id')
      .notNull()
      .references(() => packetBatches.id, { onDelete: 'restrict' }),
    position: integer('position').notNull(),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    state: text('state').notNull(),
    /** Code of the failure, with how many gaps where that is why. */
    why: text('why'),
    gapCount: integer('gap_count'),
    packetPdfId: text('packet_pdf_id').references(() => attachments.id, { onDelete: 'restrict' }),
    packetZipId: text('packet_zip_id').references(() => attachments.id, { onDelete: 'restrict' }),
    doneAt: instant('done_at'),
  },
  (t) => [
    uniqueIndex('packet_batch_items_once').on(t.batchId, t.runId),
    oneOf('packet_batch_items_state', t.state, ['waiting', 'built', 'failed']),
    rule('packet_batch_items_why', sql`(${t.state} = 'failed') = (${t.why} IS NOT NULL)`),
  ],
);
