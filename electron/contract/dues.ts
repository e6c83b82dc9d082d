/** What falls due: registrations by their last day, services and first-year contacts, reminders, and an appliance's cover. */
import { z } from 'zod';
import type { ApplianceCover } from '../../domain/coverage/applianceCover.ts';
import { COVER_REVISION_REASONS } from '../../domain/coverage/coverRevision.ts';
import { DEADLINE_ALARMS } from '../../domain/coverage/deadlineAlarm.ts';
import type { Derivation } from '../../domain/coverage/derivation.ts';
import type { ExplainedDemand } from '../../domain/service/explainService.ts';
import { SURENESSES } from '../../domain/service/serviceRule.ts';
import { CHANNELS, LANGUAGES } from '../../domain/vocabulary/people.ts';
import { FIRST_YEAR_KINDS } from '../../domain/vocabulary/work.ts';
import { day, domainValue, id, nothing, operation, optionalLine, page, words } from './operation.ts';

/** `2026-10` */
const month = z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/, 'year and month: 2026-10');
const cursor = z.string().max(120).nullable().default(null);
const derivation = domainValue<Derivation>();

/** Who asks for a service, the one that binds first, with how each day came about. */
const demands = z.array(domainValue<ExplainedDemand>());
/** null: no date to count from is on file. */
export const nextService = z.strictObject({ dueOn: day, latestOn: day, demands }).nullable();

/** Which appliance, whose, and where. */
const place = {
  applianceId: id,
  serial: z.string(),
  maker: z.string(),
  model: z.string(),
  siteId: id.nullable(),
  street: z.string().nullable(),
  postcode: z.string().nullable(),
  city: z.string().nullable(),
  customerId: id.nullable(),
  customerName: z.string().nullable(),
};

export const DEADLINE_STAGES = ['not-begun', 'recording', 'ready', 'submitted', 'confirmed'] as const;
/** `open`: all but the confirmed ones. `to-submit`: not with the maker yet. `pressing`: still to hand in, and half its time is over or more. `late`: still to hand in, and its last day is over. */
export const DEADLINE_FILTERS = ['to-submit', 'pressing', 'late', 'open', ...DEADLINE_STAGES] as const;

const deadlineRow = z.strictObject({
  ...place,
  stage: z.enum(DEADLINE_STAGES),
  dueOn: day,
  /** In the site's own zone; negative when past. */
  daysLeft: z.number().int(),
  alarm: z.enum(DEADLINE_ALARMS),
  sureness: z.enum(SURENESSES),
  derivation,
  technicianName: z.string().nullable(),
  /** null: not counted yet; ask again in a moment. */
  missingCount: z.number().int().nullable(),
  runId: id.nullable(),
  visitId: id.nullable(),
});
export type DeadlineRow = z.output<typeof deadlineRow>;

export const DUE_KINDS = ['service', 'first-call', 'look-in'] as const;

const serviceDueRow = z.strictObject({
  ...place,
  kind: z.enum(DUE_KINDS),
  windowFrom: day,
  dueOn: day,
  /** Never planned past this day. */
  latestOn: day,
  daysToLatest: z.number().int(),
  /** The month of its round; this month for what should have been ridden already. */
  month,
  area: z.string(),
  sureness: z.enum(SURENESSES),
  /** None for the first year's contacts, which are common practice. */
  demands,
  partyId: id.nullable(),
  phone: z.string().nullable(),
  /** A service opened for it, and the visit it is booked into. */
  jobId: id.nullable(),
  visitId: id.nullable(),
  bookedOn: day.nullable(),
});
export type ServiceDueRow = z.output<typeof serviceDueRow>;

const address = z.strictObject({
  street: z.string().nullable(),
  postcode: z.string().nullable(),
  city: z.string().nullable(),
  region: z.string().nullable(),
  country: z.string().nullable(),
});

/** One reminder that stands today: whoever writes it notes its key, so that nobody gets it twice. */
const reminder = z.strictObject({
  ...place,
  /** The same for the same reminder whenever it is asked for: appliance, kind, due day, stage. */
  key: z.string(),
  kind: z.enum(DUE_KINDS),
  partyId: id,
  partyName: z.string(),
  language: z.enum(LANGUAGES).nullable(),
  email: z.string().nullable(),
  phone: z.string().nullable(),
  /** Where letters go: the person's own address, else the site's. */
  postalAddress: address,
  /** What consent was asked for. */
  purpose: z.literal('service-due'),
  dueOn: day,
  latestOn: day,
  daysToLatest: z.number().int(),
  /** `before-60`, `before-30`, `before-14`, `before-3`, `week-1` …, `first-call`, `look-in`. */
  stage: z.string(),
  sendOn: day,
  /** The day of the next one; null: this is the last. */
  nextSendOn: day.nullable(),
  /** Ways this person agreed to, newest word wins. Empty: nothing is sent. */
  channels: z.array(z.enum(CHANNELS)),
  sureness: z.enum(SURENESSES),
});
export type ReminderRow = z.output<typeof reminder>;

export const dueOperations = {
  'deadlines.list': operation({
    access: 'signed-in',
    input: z.strictObject({
      show: z.enum(DEADLINE_FILTERS).default('open'),
      staffId: id.nullable().default(null),
      maker: z.string().max(300).nullable().default(null),
      /** Only last days in the week that begins on this Monday. */
      week: day.nullable().default(null),
      limit: page.limit,
      after: cursor,
    }),
    output: z.strictObject({
      rows: z.array(deadlineRow),
      next: z.string().nullable(),
      /** Packets whose gaps are still being counted. */
      uncounted: z.number().int(),
    }),
  }),
  /** What the list can be narrowed to, and how much falls due in each week. */
  'deadlines.get': operation({
    access: 'signed-in',
    input: z.strictObject({
      staffId: id.nullable().default(null),
      maker: z.string().max(300).nullable().default(null),
    }),
    output: z.strictObject({
      toSubmit: z.number().int(),
      /** Of those to submit. */
      late: z.number().int(),
      /** Submitted, not confirmed. */
      withMaker: z.number().int(),
      weeks: z.array(z.strictObject({ mondayOn: day, count: z.number().int() })),
      technicians: z.array(z.strictObject({ staffId: id, name: z.string(), count: z.number().int() })),
      makers: z.array(z.strictObject({ maker: z.string(), count: z.number().int() })),
    }),
  }),
  'serviceDue.list': operation({
    access: 'signed-in',
    input: z.strictObject({
      kind: z.enum(DUE_KINDS).default('service'),
      area: z.string().max(20).nullable().default(null),
      month: month.nullable().default(null),
      isBooked: z.boolean().nullable().default(null),
      limit: page.limit,
      after: cursor,
    }),
    output: z.strictObject({ rows: z.array(serviceDueRow), next: z.string().nullable() }),
  }),
  /** Rounds by month and area, this month first; what should have been ridden earlier is in this month's. */
  'serviceDue.get': operation({
    access: 'signed-in',
    input: z.strictObject({ months: z.number().int().min(1).max(24).default(4) }),
    output: z.strictObject({
      rounds: z.array(
        z.strictObject({
          month,
          area: z.string(),
          count: z.number().int(),
          bookedCount: z.number().int(),
          /** The earliest latest day of the round. */
          byOn: day,
          pastLatestCount: z.number().int(),
        }),
      ),
      contacts: z.array(z.strictObject({ kind: z.enum(FIRST_YEAR_KINDS), count: z.number().int() })),
    }),
  }),
  /** The call or the look-in of the first year: made, or not wanted. */
  'serviceDue.closeContact': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      applianceId: id,
      kind: z.enum(FIRST_YEAR_KINDS),
      outcome: z.enum(['done', 'not-wanted']),
      on: day,
      note: words,
    }),
    output: nothing,
  }),
  /** Reminders that stand today, by latest day. Booked services and recorded contacts have none any more. */
  'reminders.list': operation({
    access: 'signed-in',
    input: z.strictObject({
      kinds: z
        .array(z.enum(DUE_KINDS))
        .min(1)
        .default([...DUE_KINDS]),
      /** Leaves out whoever agreed to nothing. */
      onlyReachable: z.boolean().default(false),
      limit: page.limit,
      after: cursor,
    }),
    output: z.strictObject({ rows: z.array(reminder), next: z.string().nullable() }),
  }),
  'coverage.get': operation({
    access: 'signed-in',
    input: z.strictObject({ applianceId: id }),
    output: z.strictObject({
      cover: domainValue<ApplianceCover>(),
      today: day,
      /** Whose terms they are, and why that revision's. */
      sheet: z
        .strictObject({ title: z.string(), revision: z.string(), reason: z.enum(COVER_REVISION_REASONS) })
        .nullable(),
    }),
  }),
  /** That the maker was told of a new owner. */
  'coverage.recordTransfer': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ applianceId: id, changedOn: day, toldOn: day, number: optionalLine }),
    output: nothing,
  }),
  /** Works every due row out again, a step at a time, so that it can be watched and stopped. */
  'dues.rebuild': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ after: id.nullable() }),
    output: z.strictObject({ next: id.nullable(), done: z.number().int(), total: z.number().int() }),
  }),
} as const;
