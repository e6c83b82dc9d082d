/** Appliances: identity, dates kept apart, fuel states, history. */
import { z } from 'zod';
import { coverDate, fuel } from '../../domain/procedure/modelSheet.ts';
import { quantitySpec } from '../../domain/quantity/quantities.ts';
import { DATE_PRECISIONS } from '../../domain/vocabulary/places.ts';
import { JOB_KINDS } from '../../domain/vocabulary/work.ts';
import { openNotice } from './openNotice.ts';
import { day, id, line, nothing, operation, optionalLine, page, words } from './operation.ts';
import { licenceProblem } from './visits.ts';

const [RATED_MIN_KW, RATED_MAX_KW] = quantitySpec('ratedInputKw').possible;

export const applianceFields = z.strictObject({
  serial: line,
  maker: line,
  model: line,
  sheetId: z.string().nullable(),
  plateFuel: fuel.nullable(),
  tagFuel: fuel.nullable(),
  /** As much as a rated input can be: what lies beside it is a slip of the unit. */
  ratedInputKw: z.number().min(RATED_MIN_KW).max(RATED_MAX_KW).nullable(),
  ratedInputBasis: z.enum(['gross', 'net']),
  ventKind: optionalLine,
  ventLengthM: z.number().nonnegative().max(1000).nullable(),
  ventElbows: z.number().int().nonnegative().max(100).nullable(),
  isVentConcealed: z.boolean().nullable(),
  note: words,
});
export type ApplianceFields = z.output<typeof applianceFields>;

export const applianceDate = z.strictObject({
  kind: coverDate,
  on: day,
  precision: z.enum(DATE_PRECISIONS),
  source: line,
});

export const applianceSummary = z.strictObject({
  applianceId: id,
  serial: z.string(),
  maker: z.string(),
  model: z.string(),
  siteId: id.nullable(),
  street: z.string().nullable(),
  city: z.string().nullable(),
  customerId: id.nullable(),
  customerName: z.string().nullable(),
  sheetId: z.string().nullable(),
  openMakeSafes: z.number().int(),
  openNotices: z.array(openNotice),
  startedOn: day.nullable(),
});

/** The same maker and serial stands somewhere, or one that only looks the same: the wrong one of a pair, or a typing slip. */
const serialTaken = z.strictObject({
  applianceId: id,
  where: z.string().nullable(),
  how: z.enum(['serial-elsewhere', 'serial-confusable']),
  otherSerial: z.string(),
  isOnSameSite: z.boolean(),
});

export const applianceOperations = {
  'appliances.list': operation({
    access: 'signed-in',
    input: z.strictObject(page),
    output: z.strictObject({ rows: z.array(applianceSummary), next: id.nullable() }),
  }),
  'appliances.get': operation({
    access: 'signed-in',
    input: z.strictObject({ applianceId: id }),
    output: z.strictObject({
      applianceId: id,
      appliance: applianceFields,
      dates: z.array(applianceDate),
      siteId: id.nullable(),
      customerId: id.nullable(),
      fuelStates: z.array(
        z.strictObject({
          fuel,
          fromOn: day,
          conversionKit: optionalLine,
          orifice: optionalLine,
          proof: optionalLine,
          photoIds: z.array(id),
        }),
      ),
      visits: z.array(
        z.strictObject({
          visitId: id,
          runId: id.nullable(),
          kind: z.enum(JOB_KINDS),
          plannedOn: day,
          state: z.string(),
          outcome: z.string().nullable(),
          isSealed: z.boolean(),
        }),
      ),
      notices: z.array(openNotice),
      makeSafes: z.array(
        z.strictObject({
          makeSafeId: id,
          what: z.string(),
          isolatedHow: z.string().nullable(),
          labelNumber: z.string().nullable(),
          toldWhom: z.string().nullable(),
          deliveredHow: z.string().nullable(),
          /** The occupant would not have it isolated. */
          isRefused: z.boolean(),
          openedAt: z.string(),
          openedByName: z.string(),
          closedAt: z.string().nullable(),
          closedByName: z.string().nullable(),
          closedReason: z.string().nullable(),
          photoIds: z.array(id),
        }),
      ),
    }),
  }),
  'appliances.create': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      siteId: id,
      appliance: applianceFields,
      position: optionalLine,
      dates: z
        .array(applianceDate)
        .refine((dates) => new Set(dates.map(({ kind }) => kind)).size === dates.length, 'one date of each kind'),
    }),
    output: z.strictObject({ applianceId: id }),
    errors: {
      'serial-taken': serialTaken,
      'unknown-sheet': z.strictObject({ sheetId: z.string() }),
      'dates-out-of-order': z.strictObject({ earlier: coverDate, later: coverDate }),
      'day-in-future': nothing,
    },
  }),
  'appliances.update': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ applianceId: id, appliance: applianceFields }),
    output: nothing,
    errors: {
      'serial-taken': serialTaken,
      'unknown-sheet': z.strictObject({ sheetId: z.string() }),
    },
  }),
  'appliances.setDate': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ applianceId: id, date: applianceDate }),
    output: nothing,
    errors: {
      'dates-out-of-order': z.strictObject({ earlier: coverDate, later: coverDate }),
      'day-in-future': nothing,
    },
  }),
  /** Kit, orifice and photo are what proves it, and a licensed person vouches for them: it opens a hold before firing. */
  'appliances.recordFuelState': operation({
    access: ['technician'],
    input: z.strictObject({
      applianceId: id,
      fuel,
      fromOn: day,
      conversionKit: line,
      orifice: line,
      proof: optionalLine,
      /** Of kit, orifice and label. */
      photoIds: z.array(id).min(1).max(20),
    }),
    output: nothing,
    errors: { 'day-in-future': nothing, 'needs-licence': licenceProblem, 'no-photo': nothing },
  }),
} as const;
