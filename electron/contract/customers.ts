/** Customers, the parties around them, their sites with the heating system and gas, and the appliances that stand there. */
import { z } from 'zod';
import { coverDate, EMITTERS, fuel } from '../../domain/procedure/modelSheet.ts';
import { CHANNELS, LANGUAGES, PARTY_ROLES, PURPOSES } from '../../domain/vocabulary/people.ts';
import { BUILDING_KINDS, DATE_PRECISIONS } from '../../domain/vocabulary/places.ts';
import { JOB_KINDS } from '../../domain/vocabulary/work.ts';
import { day, id, line, nothing, operation, optionalLine, words } from './operation.ts';

const address = {
  street: optionalLine,
  postcode: optionalLine,
  city: optionalLine,
  region: optionalLine,
  country: optionalLine,
};

export const partyFields = z.strictObject({
  kind: z.enum(['person', 'firm']),
  name: line,
  contactName: optionalLine,
  language: z.enum(LANGUAGES).nullable(),
  email: z.email().nullable(),
  phoneTyped: optionalLine,
  ...address,
  note: words,
});
export type PartyFields = z.output<typeof partyFields>;

export const party = partyFields.extend({ partyId: id, phoneE164: z.string().nullable() });
export type Party = z.output<typeof party>;

export const siteFields = z.strictObject({
  label: optionalLine,
  street: line,
  postcode: optionalLine,
  city: line,
  region: optionalLine,
  country: line,
  latitude: z.number().min(-90).max(90).nullable(),
  longitude: z.number().min(-180).max(180).nullable(),
  jurisdiction: line,
  timeZone: line,
  buildingKind: z.enum(BUILDING_KINDS),
  access: words,
  altitudeM: z.number().min(-500).max(9000).nullable(),
  systemHeightM: z.number().min(0).max(400).nullable(),
  systemVolumeL: z.number().positive().nullable(),
  systemVolumeHow: z.enum(['metered', 'estimated']).nullable(),
  coldWaterC: z.number().min(0).max(40).nullable(),
  glycolKind: z.enum(['propylene', 'ethylene']).nullable(),
  emitters: z.array(
    z.strictObject({ emitter: z.enum(EMITTERS), zone: optionalLine, ratedKw: z.number().positive().nullable() }),
  ),
});
export type SiteFields = z.output<typeof siteFields>;

export const gasSupplyFields = z.strictObject({
  kind: z.enum(['meter', 'tank']),
  fuel,
  number: optionalLine,
  dialM3: z.number().positive().nullable(),
  compensation: z.enum(['none', 'temperature', 'temperature-pressure']).nullable(),
  capacityM3PerH: z.number().positive().nullable(),
  regulator: optionalLine,
  nominalMbarG: z.number().positive().nullable(),
  tankVolumeL: z.number().positive().nullable(),
  heatingValueMjPerM3: z.number().min(5).max(160).nullable(),
  /** As typed, with its unit. */
  heatingValueTyped: optionalLine,
  heatingValueSource: optionalLine,
  heatingValueOn: day.nullable(),
  /** `inputKw` null: connected, its input not known. */
  loads: z.array(z.strictObject({ name: line, inputKw: z.number().positive().nullable(), applianceId: id.nullable() })),
});
export type GasSupplyFields = z.output<typeof gasSupplyFields>;

export const permitFields = z.strictObject({
  number: line,
  issuer: line,
  state: z.enum(['applied', 'issued', 'inspected', 'closed', 'refused']),
  on: day.nullable(),
});
export type PermitFields = z.output<typeof permitFields>;

export const siteSummary = z.strictObject({
  siteId: id,
  customerId: id,
  customerName: z.string(),
  label: optionalLine,
  street: z.string(),
  postcode: optionalLine,
  city: z.string(),
  applianceCount: z.number().int(),
  openMakeSafes: z.number().int(),
});

export const applianceFields = z.strictObject({
  serial: line,
  maker: line,
  model: line,
  sheetId: z.string().nullable(),
  plateFuel: fuel.nullable(),
  tagFuel: fuel.nullable(),
  ratedInputKw: z.number().positive().nullable(),
  ratedInputBasis: z.enum(['gross', 'net']),
  ventKind: optionalLine,
  ventLengthM: z.number().nonnegative().nullable(),
  ventElbows: z.number().int().nonnegative().nullable(),
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
  startedOn: day.nullable(),
});

/** Lists come a page at a time; `after` is the last row's id of the page before. */
export const page = {
  query: z.string().max(200).default(''),
  limit: z.number().int().min(1).max(200).default(50),
  after: id.nullable().default(null),
};

export const customerOperations = {
  'customers.list': operation({
    access: 'signed-in',
    input: z.strictObject(page),
    output: z.strictObject({
      rows: z.array(
        z.strictObject({
          customerId: id,
          name: z.string(),
          phone: z.string().nullable(),
          city: z.string().nullable(),
          siteCount: z.number().int(),
          applianceCount: z.number().int(),
          openMakeSafes: z.number().int(),
        }),
      ),
      next: id.nullable(),
    }),
  }),
  'customers.get': operation({
    access: 'signed-in',
    input: z.strictObject({ customerId: id }),
    output: z.strictObject({
      customerId: id,
      since: day,
      note: words,
      party,
      consents: z.array(
        z.strictObject({
          purpose: z.enum(PURPOSES),
          channel: z.enum(CHANNELS),
          granted: z.boolean(),
          on: day,
          source: z.string(),
        }),
      ),
      sites: z.array(siteSummary),
      appliances: z.array(applianceSummary),
    }),
  }),
  'customers.create': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      party: partyFields,
      note: words,
      /** Go on although somebody much like this is on file. */
      isKnownNew: z.boolean().default(false),
    }),
    output: z.strictObject({ customerId: id, partyId: id }),
    errors: {
      'looks-like': z.strictObject({
        others: z.array(z.strictObject({ customerId: id, name: z.string(), why: z.string() })),
      }),
    },
  }),
  'customers.update': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ customerId: id, party: partyFields, note: words }),
    output: nothing,
  }),
  'customers.recordConsent': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      partyId: id,
      purpose: z.enum(PURPOSES),
      channel: z.enum(CHANNELS),
      granted: z.boolean(),
      on: day,
      source: line,
    }),
    output: nothing,
  }),
  'sites.create': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ customerId: id, site: siteFields }),
    output: z.strictObject({ siteId: id }),
    errors: { 'unknown-time-zone': z.strictObject({ timeZone: z.string() }) },
  }),
  'sites.update': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ siteId: id, site: siteFields }),
    output: nothing,
    errors: { 'unknown-time-zone': z.strictObject({ timeZone: z.string() }) },
  }),
  'sites.get': operation({
    access: 'signed-in',
    input: z.strictObject({ siteId: id }),
    output: z.strictObject({
      siteId: id,
      customerId: id,
      customerName: z.string(),
      site: siteFields,
      gasSupply: gasSupplyFields.nullable(),
      roles: z.array(
        z.strictObject({
          partyId: id,
          name: z.string(),
          role: z.enum(PARTY_ROLES),
          fromOn: day.nullable(),
          toOn: day.nullable(),
        }),
      ),
      permits: z.array(permitFields),
      appliances: z.array(applianceSummary),
      /** Altitudes of other sites in the same postcode or city: a slip of feet and metres shows against them. */
      neighbourAltitudesM: z.array(z.number()),
    }),
  }),
  'sites.setGasSupply': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ siteId: id, gasSupply: gasSupplyFields }),
    output: nothing,
  }),
  'sites.addRole': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      siteId: id,
      party: z.union([z.strictObject({ partyId: id }), partyFields]),
      role: z.enum(PARTY_ROLES),
      fromOn: day.nullable(),
    }),
    output: z.strictObject({ partyId: id }),
  }),
  'sites.addPermit': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ siteId: id, permit: permitFields }),
    output: nothing,
  }),
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
        z.strictObject({ fuel, fromOn: day, conversionKit: optionalLine, orifice: optionalLine, proof: optionalLine }),
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
      dates: z.array(applianceDate),
    }),
    output: z.strictObject({ applianceId: id }),
    errors: {
      /** The same maker and serial stands somewhere: the wrong one of a pair, or a typing slip. */
      'serial-taken': z.strictObject({ applianceId: id, where: z.string().nullable() }),
      'unknown-sheet': z.strictObject({ sheetId: z.string() }),
      'dates-out-of-order': z.strictObject({ earlier: coverDate, later: coverDate }),
    },
  }),
  'appliances.update': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ applianceId: id, appliance: applianceFields }),
    output: nothing,
    errors: {
      'serial-taken': z.strictObject({ applianceId: id, where: z.string().nullable() }),
      'unknown-sheet': z.strictObject({ sheetId: z.string() }),
    },
  }),
  'appliances.setDate': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ applianceId: id, date: applianceDate }),
    output: nothing,
    errors: { 'dates-out-of-order': z.strictObject({ earlier: coverDate, later: coverDate }) },
  }),
  'appliances.recordFuelState': operation({
    access: ['technician'],
    input: z.strictObject({
      applianceId: id,
      fuel,
      fromOn: day,
      conversionKit: optionalLine,
      orifice: optionalLine,
      proof: optionalLine,
    }),
    output: nothing,
  }),
} as const;
