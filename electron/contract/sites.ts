/** Sites with their heating system, gas supply, permits and the people around them. */
import { z } from 'zod';
import { EMITTERS, fuel } from '../../domain/procedure/modelSheet.ts';
import { PARTY_ROLES } from '../../domain/vocabulary/people.ts';
import { BUILDING_KINDS } from '../../domain/vocabulary/places.ts';
import { applianceSummary } from './appliances.ts';
import { day, id, line, nothing, operation, optionalLine, words } from './operation.ts';
import { partyFields } from './parties.ts';

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

const permit = permitFields.extend({ permitId: id, endReason: optionalLine });
export type Permit = z.output<typeof permit>;

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

export const siteOperations = {
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
          roleId: id,
          partyId: id,
          name: z.string(),
          role: z.enum(PARTY_ROLES),
          fromOn: day.nullable(),
          toOn: day.nullable(),
          party: partyFields,
          isErased: z.boolean(),
        }),
      ),
      permits: z.array(permit),
      /** Typed by mistake: printed nowhere, and can be put back. */
      withdrawnPermits: z.array(permit),
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
  /** Its days or its kind put right, or its end; `toOn` null: still so. */
  'sites.updateRole': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ roleId: id, role: z.enum(PARTY_ROLES), fromOn: day.nullable(), toOn: day.nullable() }),
    output: nothing,
    errors: { 'dates-reversed': z.strictObject({ validFrom: day, validTo: day }), 'day-in-future': nothing },
  }),
  /** It never was. Somebody who left keeps the role with its last day. */
  'sites.removeRole': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ roleId: id }),
    output: nothing,
  }),
  /** Anybody around a site; the customer too. */
  'parties.update': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ partyId: id, party: partyFields }),
    output: nothing,
    errors: { 'person-erased': nothing },
  }),
  'sites.addPermit': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ siteId: id, permit: permitFields }),
    output: nothing,
  }),
  /** How far it has come, or a slip in it: what it was before is in the change log. */
  'sites.updatePermit': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ permitId: id, permit: permitFields }),
    output: nothing,
  }),
  'sites.withdrawPermit': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ permitId: id, why: line }),
    output: nothing,
  }),
  'sites.putBackPermit': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ permitId: id }),
    output: nothing,
  }),
} as const;
