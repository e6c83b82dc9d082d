/** What proves the work: attachments, sealed records in chains, registrations, claims, permits and agreements. */
import { sql } from 'drizzle-orm';
import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { REGISTRATION_STATES } from '../../domain/vocabulary/work.ts';
import { day, flag, instant, isDay, isJson, oneOf, primaryId, rule } from './columns.ts';
import { parties, staff } from './people.ts';
import { appliances, sites } from './places.ts';
import { runs } from './runs.ts';
import { jobs, visits } from './work.ts';

/** The bytes lie beside the database, named by their hash; originals are never altered. */
export const attachments = sqliteTable(
  'attachments',
  {
    id: primaryId(),
    sha256: text('sha256').notNull(),
    mediaType: text('media_type').notNull(),
    byteLength: integer('byte_length').notNull(),
    fileName: text('file_name').notNull(),
    origin: text('origin').notNull(),
    derivedFromId: text('derived_from_id'),
    takenAt: instant('taken_at'),
    exifAt: text('exif_at'),
    clockOffsetS: integer('clock_offset_s'),
    subject: text('subject').notNull(),
    addedById: text('added_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    addedAt: instant('added_at').notNull(),
    /** With the person it showed: the bytes are gone, the row stays for what points to it. */
    erasedAt: instant('erased_at'),
  },
  (t) => [
    index('attachments_by_hash').on(t.sha256),
    oneOf('attachments_origin', t.origin, ['original', 'derived']),
    rule('attachments_sha256', sql`length(${t.sha256}) = 64`),
    rule('attachments_length', sql`${t.byteLength} >= 0`),
  ],
);

/** Which attachment shows what: an item of a run, an appliance, a registration's proof. */
export const attachmentLinks = sqliteTable(
  'attachment_links',
  {
    id: primaryId(),
    attachmentId: text('attachment_id')
      .notNull()
      .references(() => attachments.id, { onDelete: 'restrict' }),
    entity: text('entity').notNull(),
    entityId: text('entity_id').notNull(),
    itemKey: text('item_key'),
    removedAt: instant('removed_at'),
  },
  (t) => [index('attachment_links_by_entity').on(t.entity, t.entityId)],
);

/** One chain per visit: each entry carries the hash of the one before. Personal fields are in it only as salted commitments. */
export const seals = sqliteTable(
  'seals',
  {
    id: primaryId(),
    visitId: text('visit_id')
      .notNull()
      .references(() => visits.id, { onDelete: 'restrict' }),
    runId: text('run_id')
      .notNull()
      .references(() => runs.id, { onDelete: 'restrict' }),
    sequence: integer('sequence').notNull(),
    kind: text('kind').notNull(),
    /** RFC 8785 canonical JSON, exactly the bytes that were hashed. */
    canonical: text('canonical').notNull(),
    sha256: text('sha256').notNull(),
    previousSha256: text('previous_sha256'),
    sealedById: text('sealed_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    sealedAt: instant('sealed_at').notNull(),
  },
  (t) => [
    uniqueIndex('seals_chain').on(t.visitId, t.sequence),
    index('seals_by_run').on(t.runId),
    /** The days are counted without reading the records themselves. */
    index('seals_by_time').on(t.sealedAt, t.visitId, t.sequence, t.sha256),
    oneOf('seals_kind', t.kind, ['sealed', 'amendment']),
    isJson('seals_canonical', t.canonical),
    rule('seals_first', sql`(${t.sequence} = 1) = (${t.previousSha256} IS NULL)`),
  ],
);

/** The values behind a seal's commitments: erasing a person empties `value` and `salt`, and the chain still verifies. */
export const sealDisclosures = sqliteTable(
  'seal_disclosures',
  {
    id: primaryId(),
    sealId: text('seal_id')
      .notNull()
      .references(() => seals.id, { onDelete: 'restrict' }),
    path: text('path').notNull(),
    salt: text('salt'),
    value: text('value'),
    partyId: text('party_id').references(() => parties.id, { onDelete: 'restrict' }),
  },
  (t) => [uniqueIndex('seal_disclosures_once').on(t.sealId, t.path)],
);

/** The heads of all chains that grew on a day, hashed together: printed on reports. */
export const dayHeads = sqliteTable(
  'day_heads',
  {
    id: primaryId(),
    day: day('day').notNull(),
    sealCount: integer('seal_count').notNull(),
    sha256: text('sha256').notNull(),
    computedAt: instant('computed_at').notNull(),
  },
  (t) => [index('day_heads_by_day').on(t.day), isDay('day_heads_day', t.day)],
);

/** The deadline is derived from the sheet's cover terms and the appliance's dates, never stored. */
export const registrations = sqliteTable(
  'registrations',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    jobId: text('job_id').references(() => jobs.id, { onDelete: 'restrict' }),
    state: text('state').notNull(),
    by: text('by').notNull(),
    ownerConsentOn: day('owner_consent_on'),
    /** When the owner registers: the office's dated follow-up. */
    followUpOn: day('follow_up_on'),
    submittedOn: day('submitted_on'),
    confirmedOn: day('confirmed_on'),
    number: text('number'),
    proofAttachmentId: text('proof_attachment_id').references(() => attachments.id, { onDelete: 'restrict' }),
    note: text('note'),
    /** Why the last step was taken back or put right; gone with the next one. */
    takenBackWhy: text('taken_back_why'),
  },
  (t) => [
    uniqueIndex('registrations_appliance').on(t.applianceId),
    oneOf('registrations_state', t.state, REGISTRATION_STATES),
    oneOf('registrations_by', t.by, ['office', 'owner']),
    isDay('registrations_consent', t.ownerConsentOn),
    isDay('registrations_follow_up', t.followUpOn),
    isDay('registrations_submitted', t.submittedOn),
    isDay('registrations_confirmed', t.confirmedOn),
  ],
);

/** Documents made from records: packets, letters. The bytes are attachments. */
export const issuedDocuments = sqliteTable(
  'issued_documents',
  {
    id: primaryId(),
    kind: text('kind').notNull(),
    runId: text('run_id').references(() => runs.id, { onDelete: 'restrict' }),
    attachmentId: text('attachment_id')
      .notNull()
      .references(() => attachments.id, { onDelete: 'restrict' }),
    isDraft: flag('is_draft').notNull(),
    gapReason: text('gap_reason'),
    issuedById: text('issued_by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    issuedAt: instant('issued_at').notNull(),
  },
  (t) => [
    index('issued_documents_by_run').on(t.runId),
    oneOf('issued_documents_kind', t.kind, ['packet-pdf', 'record-json', 'packet-zip']),
  ],
);

export const claims = sqliteTable(
  'claims',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    partNumber: text('part_number').notNull(),
    partName: text('part_name'),
    openedOn: day('opened_on').notNull(),
    sentOn: day('sent_on'),
    partReturnedOn: day('part_returned_on'),
    claimNumber: text('claim_number'),
    outcome: text('outcome').notNull(),
    decidedOn: day('decided_on'),
    partsMinorUnits: integer('parts_minor_units'),
    labourMinorUnits: integer('labour_minor_units'),
    currency: text('currency'),
    /** Parts and labour are decided apart; null: not decided, or not asked for. */
    partsOutcome: text('parts_outcome'),
    labourOutcome: text('labour_outcome'),
    partsGrantedMinorUnits: integer('parts_granted_minor_units'),
    labourGrantedMinorUnits: integer('labour_granted_minor_units'),
    /** In the maker's words. */
    refusedBecause: text('refused_because'),
    note: text('note'),
  },
  (t) => [
    index('claims_by_appliance').on(t.applianceId),
    oneOf('claims_outcome', t.outcome, ['open', 'granted', 'granted-in-part', 'refused', 'withdrawn']),
    rule(
      'claims_parts_outcome',
      sql`${t.partsOutcome} IS NULL OR ${t.partsOutcome} IN ('granted', 'granted-in-part', 'refused')`,
    ),
    rule(
      'claims_labour_outcome',
      sql`${t.labourOutcome} IS NULL OR ${t.labourOutcome} IN ('granted', 'granted-in-part', 'refused')`,
    ),
    rule(
      'claims_currency',
      sql`(${t.partsMinorUnits} IS NULL AND ${t.labourMinorUnits} IS NULL) OR length(${t.currency}) = 3`,
    ),
    isDay('claims_opened', t.openedOn),
  ],
);

export const permits = sqliteTable(
  'permits',
  {
    id: primaryId(),
    siteId: text('site_id')
      .notNull()
      .references(() => sites.id, { onDelete: 'restrict' }),
    applianceId: text('appliance_id').references(() => appliances.id, { onDelete: 'restrict' }),
    number: text('number').notNull(),
    issuer: text('issuer').notNull(),
    state: text('state').notNull(),
    on: day('given_on'),
    /** Never was: typed by mistake. Kept, counts for nothing. */
    withdrawnAt: instant('withdrawn_at'),
    endReason: text('end_reason'),
  },
  (t) => [
    index('permits_by_site').on(t.siteId),
    oneOf('permits_state', t.state, ['applied', 'issued', 'inspected', 'closed', 'refused']),
    isDay('permits_on', t.on),
  ],
);

export const serviceAgreements = sqliteTable(
  'service_agreements',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    partyId: text('party_id')
      .notNull()
      .references(() => parties.id, { onDelete: 'restrict' }),
    number: text('number'),
    everyMonths: integer('every_months').notNull(),
    fromOn: day('from_on').notNull(),
    toOn: day('to_on'),
  },
  (t) => [index('service_agreements_by_appliance').on(t.applianceId), isDay('service_agreements_from', t.fromOn)],
);
