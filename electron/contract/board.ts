/** The dispatcher's board: the days as they are planned, the jobs that wait beside them, and moving a visit. */
import { z } from 'zod';
import { fuel } from '../../domain/procedure/modelSheet.ts';
import { INSTRUMENT_KINDS } from '../../domain/vocabulary/people.ts';
import { agedAnswer } from './agedAnswer.ts';
import { openNotice } from './openNotice.ts';
import { day, id, instant, nothing, operation, optionalLine } from './operation.ts';
import { crewRole, jobKind, licenceProblem, visitChanged, visitState } from './visits.ts';
import { absence, minuteOfDay, skill, workforceMember } from './workforce.ts';

export const priority = z.number().int().min(0).max(3);

const instrumentKind = z.enum(INSTRUMENT_KINDS);

const planningFields = {
  /** 0 can wait … 3 before everything else. */
  priority,
  /** Days that suit the customer. */
  wantedFromOn: day.nullable(),
  wantedToOn: day.nullable(),
  /** After this day it is too late, and what makes it so. */
  latestOn: day.nullable(),
  latestWhy: optionalLine,
  /** Minutes on site when they differ from what kind and model suggest. */
  expectedMin: z.number().int().min(1).max(5760).nullable(),
  skills: z.array(skill).max(20),
};

const boardJob = z.strictObject({
  jobId: id,
  kind: jobKind,
  applianceId: id,
  serial: z.string(),
  maker: z.string(),
  model: z.string(),
  fuel: fuel.nullable(),
  ratedInputKw: z.number().nullable(),
  /** State or province of the site, and its country. */
  region: z.string().nullable(),
  country: z.string().nullable(),
  /** Finished: a visit still to come has nothing left to do. */
  isDone: z.boolean(),
  openMakeSafes: z.number().int(),
  openNotices: z.array(openNotice),
  /** What its sheet asks of whoever goes: measured with what, and what the maker insists on. */
  instruments: z.array(instrumentKind),
  insistsOnTraining: z.boolean(),
  insistsOnInstruments: z.boolean(),
  /** Blocking readiness items not yet answered yes. */
  openReadiness: z.array(z.string()),
  agedReadiness: z.array(agedAnswer),
  openedAt: instant,
  ...planningFields,
});
export type BoardJob = z.output<typeof boardJob>;

const place = {
  siteId: id,
  customerId: id,
  customerName: z.string(),
  street: z.string(),
  postcode: z.string().nullable(),
  city: z.string(),
  latitude: z.number().nullable(),
  longitude: z.number().nullable(),
};

/** Names as they are written in the firm's table of travel times. */
const travelPair = z.strictObject({ from: z.string(), to: z.string(), minutes: z.number().int() });

const boardVisit = z.strictObject({
  visitId: id,
  ...place,
  state: visitState,
  plannedOn: day,
  startMin: minuteOfDay.nullable(),
  durationMin: z.number().int(),
  /** The window in which the arrival was promised. */
  plannedFrom: z.string().nullable(),
  plannedTo: z.string().nullable(),
  promisedOn: day.nullable(),
  isTechnicianPinned: z.boolean(),
  isDayPinned: z.boolean(),
  isStartPinned: z.boolean(),
  revision: z.number().int(),
  crew: z.array(z.strictObject({ staffId: id, name: z.string(), role: crewRole })),
  jobs: z.array(boardJob),
});
export type BoardVisit = z.output<typeof boardVisit>;

const boardTechnician = workforceMember.extend({
  absences: z.array(absence),
  licences: z.array(
    z.strictObject({
      fuel: fuel.nullable(),
      maxKw: z.number().nullable(),
      validFrom: day,
      validTo: day,
      place: z.string().nullable(),
    }),
  ),
  trainings: z.array(
    z.strictObject({ maker: z.string(), modelLine: z.string(), validFrom: day, validTo: day.nullable() }),
  ),
  /** Their own, and those that nobody keeps. */
  instruments: z.array(
    z.strictObject({
      instrumentId: id,
      label: z.string(),
      kinds: z.array(instrumentKind),
      isShared: z.boolean(),
      calibrations: z.array(z.strictObject({ calibratedOn: day, dueOn: day })),
    }),
  ),
});
export type BoardTechnician = z.output<typeof boardTechnician>;

const unplacedJob = boardJob.extend({ ...place, suggestedMin: z.number().int() });
export type UnplacedJob = z.output<typeof unplacedJob>;

const moveErrors = {
  'visit-changed': visitChanged,
  'visit-begun': z.strictObject({ state: visitState }),
} as const;

export const boardOperations = {
  'board.get': operation({
    access: 'signed-in',
    input: z.strictObject({ from: day, to: day }),
    output: z.strictObject({
      technicians: z.array(boardTechnician),
      visits: z.array(boardVisit),
      /** Without a visit and with a site to go to, what presses first. */
      unplaced: z.array(unplacedJob),
      travel: z.strictObject({
        roadFactor: z.number(),
        speedKmPerH: z.number(),
        /** Where people without a base of their own set out. */
        firm: z.strictObject({
          street: z.string().nullable(),
          postcode: z.string().nullable(),
          city: z.string().nullable(),
          latitude: z.number().nullable(),
          longitude: z.number().nullable(),
        }),
        /** Of the firm's own table, the ways between places that are on the board. */
        pairs: z.array(travelPair),
      }),
    }),
  }),
  /** Another day, start, length or technician; helpers of the crew stay. */
  'visits.place': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      visitId: id,
      baseRevision: z.number().int(),
      plannedOn: day,
      startMin: minuteOfDay.nullable(),
      durationMin: z.number().int().min(1).max(5760),
      /** Who is replaced by whom; null: the crew stays. */
      moveCrew: z.strictObject({ fromStaffId: id, toStaffId: id }).nullable(),
    }),
    output: z.strictObject({ revision: z.number().int() }),
    errors: { ...moveErrors, 'needs-licence': licenceProblem, 'not-on-crew': z.strictObject({ staffId: id }) },
  }),
  /** What a planner may not change, each separately. */
  'visits.pin': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({
      visitId: id,
      baseRevision: z.number().int(),
      isTechnicianPinned: z.boolean(),
      isDayPinned: z.boolean(),
      isStartPinned: z.boolean(),
    }),
    output: z.strictObject({ revision: z.number().int() }),
    errors: moveErrors,
  }),
  /** The customer was told the day and window as they now stand; false: takes it back. */
  'visits.promise': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ visitId: id, baseRevision: z.number().int(), isPromised: z.boolean() }),
    output: z.strictObject({ revision: z.number().int() }),
    errors: moveErrors,
  }),
  'jobs.getPlanning': operation({
    access: 'signed-in',
    input: z.strictObject({ jobId: id }),
    output: z.strictObject({ ...planningFields, suggestedMin: z.number().int() }),
  }),
  'jobs.setPlanning': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ jobId: id, ...planningFields }),
    output: nothing,
    errors: { 'dates-reversed': z.strictObject({ fromOn: day, toOn: day }) },
  }),
} as const;
