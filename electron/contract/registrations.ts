/** From the sealed record to the maker's confirmation: deadlines, what is missing, the packet's documents. */
import { z } from 'zod';
import { COVER_DATES } from '../../domain/procedure/modelSheet.ts';
import { REGISTRATION_STATES } from '../../domain/vocabulary/work.ts';
import { day, id, line, nothing, operation, optionalLine, page, words } from './operation.ts';

/** The last day and how it came about; every part is data, the sentence is made on the screen. */
export const deadline = z.strictObject({
  dueOn: day,
  weekday: z.number().int().min(1).max(7),
  daysLeft: z.number().int(),
  countedFrom: z.enum(COVER_DATES),
  countedFromOn: day,
  window: z.union([z.strictObject({ days: z.number().int() }), z.strictObject({ months: z.number().int() })]),
  /** True when the sheet names no usable date and the earliest known one was taken. */
  isAssumed: z.boolean(),
});
export type Deadline = z.output<typeof deadline>;

export const registrationState = z.enum(REGISTRATION_STATES);

const registrationRow = z.strictObject({
  applianceId: id,
  registrationId: id.nullable(),
  serial: z.string(),
  maker: z.string(),
  model: z.string(),
  customerName: z.string().nullable(),
  street: z.string().nullable(),
  city: z.string().nullable(),
  state: registrationState,
  by: z.enum(['office', 'owner']),
  deadline: deadline.nullable(),
  runId: id.nullable(),
  visitId: id.nullable(),
  followUpOn: day.nullable(),
  /** null: not counted yet; ask again in a moment. */
  missingCount: z.number().int().nullable(),
});
export type RegistrationRow = z.output<typeof registrationRow>;

/** One thing the packet still lacks; `where` says which screen it is given on. */
export const packetGap = z.strictObject({
  code: z.string(),
  where: z.enum(['customer', 'site', 'appliance', 'visit', 'staff', 'instrument', 'registration']),
  stepKey: z.string().nullable(),
  itemKey: z.string().nullable(),
  detail: z.string().nullable(),
});
export type PacketGap = z.output<typeof packetGap>;

/** It can't have been before this one. */
const dayTooEarly = z.strictObject({ after: z.enum([...COVER_DATES, 'submitted']), on: day });

export const registrationOperations = {
  'registrations.list': operation({
    access: 'signed-in',
    input: z.strictObject({
      openOnly: z.boolean().default(true),
      /** Only those the office has to follow up on this day or before. */
      followUpBy: day.nullable().default(null),
      limit: page.limit,
      after: z.string().max(120).nullable().default(null),
    }),
    /** What is not with the maker yet first, each by its last day. */
    output: z.strictObject({
      rows: z.array(registrationRow),
      next: z.string().nullable(),
      /** Packets of this page whose gaps are still being counted. */
      uncounted: z.number().int(),
    }),
  }),
  'registrations.get': operation({
    access: 'signed-in',
    input: z.strictObject({ applianceId: id }),
    output: registrationRow.extend({
      missingCount: z.number().int(),
      gaps: z.array(packetGap),
      ownerConsentOn: day.nullable(),
      /** What the customer said to being registered, as it stands among their consents: offered, not taken for granted. */
      consentOnFileOn: day.nullable(),
      submittedOn: day.nullable(),
      confirmedOn: day.nullable(),
      number: optionalLine,
      /** Why the last step was taken back or put right. */
      takenBackWhy: z.string().nullable(),
      /** What the maker sent as proof. */
      proofAttachmentId: id.nullable(),
      note: words,
      documents: z.array(
        z.strictObject({
          attachmentId: id,
          kind: z.enum(['packet-pdf', 'record-json', 'packet-zip']),
          isDraft: z.boolean(),
          /** Why it went out with something missing; null: nothing was, or it is a draft. */
          gapReason: z.string().nullable(),
          issuedAt: z.iso.datetime(),
        }),
      ),
    }),
  }),
  /** Who registers: the office on the owner's behalf with consent, or the owner with a dated follow-up on the office. */
  'registrations.decide': operation({
    access: ['owner', 'dispatcher', 'technician'],
    input: z.strictObject({
      applianceId: id,
      by: z.enum(['office', 'owner']),
      ownerConsentOn: day.nullable(),
      followUpOn: day.nullable(),
    }),
    output: nothing,
    errors: { 'consent-missing': nothing, 'follow-up-missing': nothing, 'day-in-future': nothing },
  }),
  'registrations.submit': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ applianceId: id, submittedOn: day, note: words }),
    output: nothing,
    errors: { 'packet-missing': nothing, 'day-in-future': nothing, 'day-too-early': dayTooEarly },
  }),
  'registrations.confirm': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ applianceId: id, confirmedOn: day, number: line, proofAttachmentId: id.nullable() }),
    output: nothing,
    errors: { 'not-submitted': nothing, 'day-in-future': nothing, 'day-too-early': dayTooEarly },
  }),
  /** A day or number typed wrong, put right with a reason; what stood there is in the change log. */
  'registrations.correct': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({
      applianceId: id,
      submittedOn: day,
      note: words,
      /** null: the maker has not confirmed it. */
      confirmation: z.strictObject({ confirmedOn: day, number: line }).nullable(),
      why: line,
    }),
    output: nothing,
    errors: {
      'not-submitted': nothing,
      'registration-changed': nothing,
      'day-in-future': nothing,
      'day-too-early': dayTooEarly,
    },
  }),
  /** It was not handed in, or not confirmed, after all: the last step is taken back with a reason. */
  'registrations.takeBack': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ applianceId: id, step: z.enum(['submitted', 'confirmed']), why: line }),
    output: nothing,
    errors: { 'registration-changed': nothing },
  }),
  'packets.check': operation({
    access: 'signed-in',
    input: z.strictObject({ runId: id }),
    output: z.strictObject({ isSealed: z.boolean(), gaps: z.array(packetGap) }),
  }),
  /** The final packet needs a sealed record without gaps, or the owner's reason; a draft says on every page that it is one. */
  'packets.build': operation({
    access: ['owner', 'dispatcher', 'technician'],
    input: z.strictObject({ runId: id, isDraft: z.boolean(), gapReason: optionalLine }),
    output: z.strictObject({ packetPdfId: id, recordJsonId: id, packetZipId: id, sha256: z.string() }),
    errors: { 'gaps-open': z.strictObject({ gaps: z.array(packetGap) }), 'not-sealed': nothing },
  }),
} as const;
