/** Who is involved: the company and its people, parties (customers, owners, builders …) with dated roles, and consent. */
import { sql } from 'drizzle-orm';
import { index, real, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import type { ExportMapping } from '../../domain/intake/exportMapping.ts';
import {
  CHANNELS,
  INSTRUMENT_KINDS,
  LANGUAGES,
  PURPOSES,
  STAFF_ROLES,
  UNIT_SYSTEMS,
} from '../../domain/vocabulary/people.ts';
import { day, flag, instant, isDay, isJson, json, oneOf, primaryId, rule } from './columns.ts';

/** One row: the firm that uses this store. */
export const companies = sqliteTable(
  'companies',
  {
    id: primaryId(),
    name: text('name').notNull(),
    street: text('street'),
    postcode: text('postcode'),
    city: text('city'),
    region: text('region'),
    country: text('country').notNull(),
    phone: text('phone'),
    email: text('email'),
    licenceNumber: text('licence_number'),
    timeZone: text('time_zone').notNull(),
    unitSystem: text('unit_system').notNull(),
    language: text('language').notNull(),
    jurisdiction: text('jurisdiction').notNull(),
    /** Printed for occupants; without it no such printout is made. */
    emergencyNumber: text('emergency_number'),
    /** Where people without a base of their own set out. */
    latitude: real('latitude'),
    longitude: real('longitude'),
    /** Road kilometres for one kilometre in a straight line; null: the common-practice value. */
    travelRoadFactor: real('travel_road_factor'),
    travelSpeedKmPerH: real('travel_speed_km_per_h'),
  },
  (t) => [
    oneOf('companies_unit_system', t.unitSystem, UNIT_SYSTEMS),
    oneOf('companies_language', t.language, LANGUAGES),
  ],
);

export const staff = sqliteTable(
  'staff',
  {
    id: primaryId(),
    name: text('name').notNull(),
    initials: text('initials').notNull(),
    phone: text('phone'),
    email: text('email'),
    pinHash: text('pin_hash'),
    unitSystem: text('unit_system'),
    activeFrom: day('active_from').notNull(),
    activeTo: day('active_to'),
    /** Where the day begins and ends; null: at the firm's address. */
    baseStreet: text('base_street'),
    basePostcode: text('base_postcode'),
    baseCity: text('base_city'),
    baseLatitude: real('base_latitude'),
    baseLongitude: real('base_longitude'),
  },
  (t) => [
    isDay('staff_active_from', t.activeFrom),
    isDay('staff_active_to', t.activeTo),
    rule('staff_unit_system', sql`${t.unitSystem} IS NULL OR ${t.unitSystem} IN ('metric', 'us')`),
  ],
);

export const staffRoles = sqliteTable(
  'staff_roles',
  {
    id: primaryId(),
    staffId: text('staff_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    role: text('role').notNull(),
  },
  (t) => [oneOf('staff_roles_role', t.role, STAFF_ROLES), uniqueIndex('staff_roles_once').on(t.staffId, t.role)],
);

export const licences = sqliteTable(
  'licences',
  {
    id: primaryId(),
    staffId: text('staff_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    number: text('number').notNull(),
    issuer: text('issuer').notNull(),
    place: text('place').notNull(),
    licenceClass: text('licence_class').notNull(),
    /** null: every fuel. */
    fuel: text('fuel'),
    /** Largest appliance it covers; null: no size line. */
    maxKw: real('max_kw'),
    validFrom: day('valid_from').notNull(),
    validTo: day('valid_to').notNull(),
    /** Never was: typed by mistake. Kept, counts for nothing. */
    withdrawnAt: instant('withdrawn_at'),
    /** Why it ended early or was withdrawn. */
    endReason: text('end_reason'),
  },
  (t) => [
    index('licences_by_staff').on(t.staffId),
    isDay('licences_valid_from', t.validFrom),
    isDay('licences_valid_to', t.validTo),
    rule('licences_order', sql`${t.validFrom} <= ${t.validTo}`),
    rule('licences_max_kw', sql`${t.maxKw} IS NULL OR ${t.maxKw} > 0`),
  ],
);

export const trainings = sqliteTable('trainings', {
  id: primaryId(),
  staffId: text('staff_id')
    .notNull()
    .references(() => staff.id, { onDelete: 'restrict' }),
  maker: text('maker').notNull(),
  modelLine: text('model_line').notNull(),
  number: text('number'),
  validFrom: day('valid_from').notNull(),
  validTo: day('valid_to'),
  /** Never was: typed by mistake. Kept, counts for nothing. */
  withdrawnAt: instant('withdrawn_at'),
  /** Why it ended early or was withdrawn. */
  endReason: text('end_reason'),
});

export const parties = sqliteTable(
  'parties',
  {
    id: primaryId(),
    kind: text('kind').notNull(),
    name: text('name').notNull(),
    contactName: text('contact_name'),
    language: text('language'),
    email: text('email'),
    phoneTyped: text('phone_typed'),
    phoneE164: text('phone_e164'),
    street: text('street'),
    postcode: text('postcode'),
    city: text('city'),
    region: text('region'),
    country: text('country'),
    note: text('note'),
    /** Folded name, street and phone for searching; rebuilt from the other fields at any time. */
    searchText: text('search_text').notNull(),
    erasedAt: instant('erased_at'),
  },
  (t) => [oneOf('parties_kind', t.kind, ['person', 'firm']), index('parties_by_name').on(t.name)],
);

/** The accounts of the firm: the party that is its customer. */
export const customers = sqliteTable(
  'customers',
  {
    id: primaryId(),
    partyId: text('party_id')
      .notNull()
      .references(() => parties.id, { onDelete: 'restrict' }),
    since: day('since').notNull(),
    note: text('note'),
  },
  (t) => [uniqueIndex('customers_party').on(t.partyId), isDay('customers_since', t.since)],
);

export const consents = sqliteTable(
  'consents',
  {
    id: primaryId(),
    partyId: text('party_id')
      .notNull()
      .references(() => parties.id, { onDelete: 'restrict' }),
    purpose: text('purpose').notNull(),
    channel: text('channel').notNull(),
    granted: flag('granted').notNull(),
    on: day('given_on').notNull(),
    source: text('source').notNull(),
  },
  (t) => [
    index('consents_by_party').on(t.partyId),
    oneOf('consents_purpose', t.purpose, PURPOSES),
    oneOf('consents_channel', t.channel, CHANNELS),
    isDay('consents_on', t.on),
  ],
);

export const instruments = sqliteTable(
  'instruments',
  {
    id: primaryId(),
    kind: text('kind').notNull(),
    label: text('label').notNull(),
    serial: text('serial').notNull(),
    /** Accuracy by quantity: `{ coPpm: { abs, relPct } }`. */
    accuracy: json<Partial<Record<string, { abs: number; relPct: number }>>>('accuracy').notNull(),
    rangeMax: json<Partial<Record<string, number>>>('range_max').notNull(),
    keptBy: text('kept_by').references(() => staff.id, { onDelete: 'restrict' }),
    retiredOn: day('retired_on'),
    /** Why it is out of use. */
    endReason: text('end_reason'),
  },
  (t) => [oneOf('instruments_kind', t.kind, INSTRUMENT_KINDS)],
);

export const calibrations = sqliteTable(
  'calibrations',
  {
    id: primaryId(),
    instrumentId: text('instrument_id')
      .notNull()
      .references(() => instruments.id, { onDelete: 'restrict' }),
    calibratedOn: day('calibrated_on').notNull(),
    dueOn: day('due_on').notNull(),
    certificate: text('certificate'),
    /** Never was: typed by mistake. Kept, counts for nothing. */
    withdrawnAt: instant('withdrawn_at'),
    /** Why it was withdrawn. */
    endReason: text('end_reason'),
  },
  (t) => [
    index('calibrations_by_instrument').on(t.instrumentId, t.dueOn),
    isDay('calibrations_on', t.calibratedOn),
    isDay('calibrations_due', t.dueOn),
    rule('calibrations_order', sql`${t.calibratedOn} <= ${t.dueOn}`),
  ],
);

/** What the columns of an instrument's own export mean, as somebody said once: kept for the next file. */
export const instrumentMappings = sqliteTable(
  'instrument_mappings',
  {
    id: primaryId(),
    instrumentId: text('instrument_id')
      .notNull()
      .references(() => instruments.id, { onDelete: 'restrict' }),
    mapping: json<ExportMapping>('mapping').notNull(),
  },
  (t) => [uniqueIndex('instrument_mappings_once').on(t.instrumentId), isJson('instrument_mappings_json', t.mapping)],
);
