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
} as const;
