/** Visits: booked, moved, begun, come back to; and the words that others say about them. */
import { z } from 'zod';
import { fuel } from '../../domain/procedure/modelSheet.ts';
import { LICENCE_PROBLEMS } from '../../domain/schedule/gasLicence.ts';
import type { Obstacle } from '../../domain/schedule/obstacles.ts';
import { CREW_ROLES, JOB_KINDS, VISIT_OUTCOMES, VISIT_STATES } from '../../domain/vocabulary/work.ts';
import { openNotice } from './openNotice.ts';
import { day, domainValue, id, line, nothing, operation, words } from './operation.ts';
import { minuteOfDay } from './workforce.ts';

export const jobKind = z.enum(JOB_KINDS);
export const visitState = z.enum(VISIT_STATES);
export const visitOutcome = z.enum(VISIT_OUTCOMES);
export const wallTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'hours and minutes: 08:30');
export const crewRole = z.enum(CREW_ROLES);

/** Why somebody may not do gas work on this appliance on that day. */
export const licenceProblem = z.strictObject({
  staffId: id,
  name: z.string(),
  why: z.enum(LICENCE_PROBLEMS),
  on: day,
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
      openNotices: z.array(openNotice),
    }),
  ),
});
export type VisitRow = z.output<typeof visitRow>;

const crew = z
  .array(z.strictObject({ staffId: id, role: crewRole }))
  .min(1)
  .refine((all) => new Set(all.map(({ staffId }) => staffId)).size === all.length, 'everybody goes once');

export const visitOperations = {
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
        obstacles: z.array(domainValue<Obstacle>()),
      }),
    ),
  }),
  'visits.book': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      jobIds: z
        .array(id)
        .min(1)
        .max(50)
        .refine((ids) => new Set(ids).size === ids.length, 'a job is booked once'),
      plannedOn: day,
      plannedFrom: wallTime.nullable(),
      plannedTo: wallTime.nullable(),
      durationMin: z.number().int().min(1).max(5760),
      crew,
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
      'not-standing': nothing,
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
      crew,
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
  /** Visits of a job that were cancelled. */
  'visits.listCancelled': operation({
    access: 'signed-in',
    input: z.strictObject({ jobId: id }),
    output: z.array(
      z.strictObject({
        visitId: id,
        plannedOn: day,
        startMin: minuteOfDay.nullable(),
        reason: z.string().nullable(),
        crew: z.array(z.string()),
      }),
    ),
  }),
  /** A cancelled visit stands in the diary again, day, people and jobs as they were; pencilled where readiness is open. */
  'visits.bringBack': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ visitId: id }),
    output: z.strictObject({ isPencilled: z.boolean(), revision: z.number().int() }),
    errors: {
      'visit-not-cancelled': nothing,
      'job-booked-elsewhere': z.strictObject({ visitId: id }),
      'job-closed': nothing,
      'not-standing': nothing,
      'jobs-on-several-sites': nothing,
      'needs-licence': licenceProblem,
    },
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
} as const;
