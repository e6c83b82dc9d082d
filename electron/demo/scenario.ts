/** The demo's invented firm and its three years of work, as data. All dates are counted from `anchorOn` and moved to today when it is opened. */
import { z } from 'zod';
import { WRITTEN_CHANNELS } from '../../domain/messages/messageKinds.ts';
import { RECALL_OUTCOMES } from '../../domain/recalls/openNotices.ts';
import { CHANNELS, INSTRUMENT_KINDS, PURPOSES, STAFF_ROLES } from '../../domain/vocabulary/people.ts';
import { agreementFields } from '../contract/agreements.ts';
import { companyProfile } from '../contract/app.ts';
import { applianceDate, applianceFields } from '../contract/appliances.ts';
import { claimFields } from '../contract/history.ts';
import { partyFields } from '../contract/parties.ts';
import { wastedTripCode } from '../contract/readiness.ts';
import { recallFields } from '../contract/recalls.ts';
import { gasSupplyFields, permitFields, siteFields } from '../contract/sites.ts';
import { base, minuteOfDay, skill, travelSettings, workingHours } from '../contract/workforce.ts';
import { recordedRun } from './recordedRun.ts';

const key = z.string();

export const scenario = z.strictObject({
  anchorOn: z.iso.date(),
  company: companyProfile,
  travel: travelSettings,
  people: z.array(
    z.strictObject({
      key,
      name: z.string(),
      initials: z.string(),
      roles: z.array(z.enum(STAFF_ROLES)),
      licences: z.array(
        z.strictObject({
          number: z.string(),
          issuer: z.string(),
          place: z.string(),
          licenceClass: z.string(),
          fuel: z.enum(['natural-gas', 'propane']).nullable(),
          maxKw: z.number().nullable(),
          validFrom: z.iso.date(),
          validTo: z.iso.date(),
        }),
      ),
      trainings: z.array(
        z.strictObject({
          maker: z.string(),
          modelLine: z.string(),
          number: z.string().nullable(),
          validFrom: z.iso.date(),
          validTo: z.iso.date().nullable(),
        }),
      ),
      hours: z.array(workingHours),
      skills: z.array(skill),
      base: base.nullable(),
    }),
  ),
  /** Counted in working days from the anchor, 0 being the first. */
  absences: z.array(
    z.strictObject({
      personKey: key,
      fromWorkingDay: z.number().int(),
      toWorkingDay: z.number().int(),
      reason: z.string(),
    }),
  ),
  instruments: z.array(
    z.strictObject({
      key,
      kind: z.enum(INSTRUMENT_KINDS),
      label: z.string(),
      serial: z.string(),
      keptByKey: key.nullable(),
      accuracy: z.record(z.string(), z.strictObject({ abs: z.number(), relPct: z.number() })),
      rangeMax: z.record(z.string(), z.number()),
      calibrations: z.array(
        z.strictObject({ calibratedOn: z.iso.date(), dueOn: z.iso.date(), certificate: z.string() }),
      ),
    }),
  ),
  tradeParties: z.array(z.strictObject({ key, party: partyFields })),
  customers: z.array(
    z.strictObject({
      key,
      since: z.iso.date(),
      party: partyFields,
      consents: z.array(
        z.strictObject({
          purpose: z.enum(PURPOSES),
          channel: z.enum(CHANNELS),
          granted: z.boolean(),
          on: z.iso.date(),
          source: z.string(),
        }),
      ),
      sites: z.array(
        z.strictObject({
          key,
          site: siteFields,
          gasSupply: gasSupplyFields,
          /** Fitter and supplier, by the keys of `tradeParties`. */
          roles: z.array(z.strictObject({ partyKey: key, role: z.enum(['fitter', 'supplier', 'occupant']) })),
          permits: z.array(permitFields),
          appliances: z.array(
            z.strictObject({
              key,
              appliance: applianceFields,
              position: z.string().nullable(),
              dates: z.array(applianceDate),
            }),
          ),
        }),
      ),
    }),
  ),
  visits: z.array(
    z.strictObject({
      key,
      applianceKey: key,
      kind: z.enum(['startup', 'service']),
      technicianKey: key,
      plannedOn: z.iso.date(),
      plannedFrom: z.string(),
      plannedTo: z.string(),
      durationMin: z.number(),
      /** Booked only: nothing is recorded yet. */
      isDone: z.boolean(),
      isPencilled: z.boolean(),
      analyserKey: key,
      faultKey: z.string().nullable(),
      /** What was written first and then read again: only entries that differ from `notes` count. */
      firstNotes: recordedRun.nullable(),
      notes: recordedRun.nullable(),
    }),
  ),
  /** Services booked for the coming days, by working day from the anchor: a demo opened on a Sunday has a full week too. */
  upcoming: z.array(
    z.strictObject({
      applianceKey: key,
      technicianKey: key,
      workingDay: z.number().int(),
      startMin: minuteOfDay,
      durationMin: z.number().int(),
      plannedFrom: z.string(),
      plannedTo: z.string(),
      isPromised: z.boolean(),
    }),
  ),
  /** Trips to a startup that could not be done that day, some days before it was. */
  wastedTrips: z.array(
    z.strictObject({
      visitKey: key,
      daysBefore: z.number().int(),
      code: wastedTripCode,
      isChargeable: z.boolean(),
      note: z.string().nullable(),
    }),
  ),
  /** Asked for but not booked. */
  openJobs: z.array(
    z.strictObject({
      applianceKey: key,
      kind: z.enum(['startup', 'service', 'repair']),
      readyItems: z.number().int(),
      priority: z.number().int(),
      latestOn: z.iso.date().nullable(),
      latestWhy: z.string().nullable(),
    }),
  ),
  registrations: z.array(
    z.strictObject({
      applianceKey: key,
      state: z.enum(['recording', 'submitted', 'confirmed']),
      by: z.enum(['office', 'owner']),
      submittedOn: z.iso.date().nullable(),
      confirmedOn: z.iso.date().nullable(),
      number: z.string().nullable(),
      followUpOn: z.iso.date().nullable(),
    }),
  ),
  makeSafes: z.array(
    z.strictObject({
      applianceKey: key,
      visitKey: key,
      what: z.string(),
      isolatedHow: z.string(),
      labelNumber: z.string(),
      toldWhom: z.string(),
      isClosed: z.boolean(),
    }),
  ),
  /** With whoever the appliance's site belongs to. */
  agreements: z.array(agreementFields.omit({ partyId: true }).extend({ applianceKey: key })),
  claims: z.array(z.strictObject({ applianceKey: key, claim: claimFields })),
  recalls: z.array(
    z.strictObject({
      key,
      recall: recallFields,
      outcomes: z.array(
        z.strictObject({
          applianceKey: key,
          outcome: z.enum(RECALL_OUTCOMES),
          on: z.iso.date(),
          note: z.string().nullable(),
        }),
      ),
    }),
  ),
  /** What an earlier program had, as CSV: one list taken in, one with faults that still waits to be put right. */
  lists: z.array(
    z.strictObject({
      fileName: z.string(),
      broughtAt: z.iso.datetime(),
      isTakenIn: z.boolean(),
      /** Headings first; a cell that is a day moves with all others. */
      rows: z.array(z.array(z.string())),
    }),
  ),
  /** Startups whose packets were asked for in one go; drawn when the demo is opened for the first time. */
  packetBatches: z.array(z.strictObject({ startedAt: z.iso.datetime(), visitKeys: z.array(key) })),
  /** What was written to people in the last weeks, in their order: what stood on that day, and what came of it. */
  mailings: z.array(
    z.strictObject({
      /** null: reminders of services. */
      recallKey: key.nullable(),
      channel: z.enum(WRITTEN_CHANNELS),
      preparedAt: z.iso.datetime(),
      /** As many people at most. */
      atMost: z.number().int(),
      sentOn: z.iso.date().nullable(),
      /** Of single ones, counted from 0. */
      events: z.array(
        z.strictObject({
          nth: z.number().int(),
          kind: z.enum(['bounced', 'answered', 'withdrawn']),
          on: z.iso.date(),
          note: z.string(),
        }),
      ),
    }),
  ),
});
export type Scenario = z.output<typeof scenario>;
