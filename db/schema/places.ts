/** Where things are: sites with their heating system and gas, appliances with their dates, placements and fuel states. */
import { sql } from 'drizzle-orm';
import { index, integer, real, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { COVER_DATES, FUELS } from '../../domain/procedure/modelSheet.ts';
import { PARTY_ROLES } from '../../domain/vocabulary/people.ts';
import { BUILDING_KINDS, DATE_PRECISIONS } from '../../domain/vocabulary/places.ts';
import { day, flag, instant, isDay, isJson, json, oneOf, primaryId, rule } from './columns.ts';
import { customers, parties, staff } from './people.ts';

export const sites = sqliteTable(
  'sites',
  {
    id: primaryId(),
    customerId: text('customer_id')
      .notNull()
      .references(() => customers.id, { onDelete: 'restrict' }),
    label: text('label'),
    street: text('street').notNull(),
    postcode: text('postcode'),
    city: text('city').notNull(),
    region: text('region'),
    country: text('country').notNull(),
    latitude: real('latitude'),
    longitude: real('longitude'),
    jurisdiction: text('jurisdiction').notNull(),
    timeZone: text('time_zone').notNull(),
    buildingKind: text('building_kind').notNull(),
    access: text('access'),
    altitudeM: real('altitude_m'),
    /** Gauge to the highest water of the system, not the building's height. */
    systemHeightM: real('system_height_m'),
    systemVolumeL: real('system_volume_l'),
    systemVolumeHow: text('system_volume_how'),
    coldWaterC: real('cold_water_c'),
    glycolKind: text('glycol_kind'),
    searchText: text('search_text').notNull(),
  },
  (t) => [
    index('sites_by_customer').on(t.customerId),
    oneOf('sites_building_kind', t.buildingKind, BUILDING_KINDS),
    rule('sites_altitude', sql`${t.altitudeM} IS NULL OR ${t.altitudeM} BETWEEN -500 AND 9000`),
    rule('sites_height', sql`${t.systemHeightM} IS NULL OR ${t.systemHeightM} BETWEEN 0 AND 400`),
    rule('sites_volume', sql`${t.systemVolumeL} IS NULL OR ${t.systemVolumeL} > 0`),
    rule('sites_volume_how', sql`${t.systemVolumeHow} IS NULL OR ${t.systemVolumeHow} IN ('metered', 'estimated')`),
    rule('sites_glycol', sql`${t.glycolKind} IS NULL OR ${t.glycolKind} IN ('propylene', 'ethylene')`),
  ],
);

export const siteEmitters = sqliteTable(
  'site_emitters',
  {
    id: primaryId(),
    siteId: text('site_id')
      .notNull()
      .references(() => sites.id, { onDelete: 'restrict' }),
    emitter: text('emitter').notNull(),
    zone: text('zone'),
    ratedKw: real('rated_kw'),
    removedAt: instant('removed_at'),
  },
  (t) => [index('site_emitters_by_site').on(t.siteId)],
);

/** A house that changed hands: whose it was and became, and what was written for it, so that a mistake can be put back. */
export const siteTransfers = sqliteTable(
  'site_transfers',
  {
    id: primaryId(),
    siteId: text('site_id')
      .notNull()
      .references(() => sites.id, { onDelete: 'restrict' }),
    changedOn: day('changed_on').notNull(),
    fromCustomerId: text('from_customer_id')
      .notNull()
      .references(() => customers.id, { onDelete: 'restrict' }),
    toCustomerId: text('to_customer_id')
      .notNull()
      .references(() => customers.id, { onDelete: 'restrict' }),
    /** Ids of party roles it ended and added; those added go when it is taken back. */
    roles: json<{ readonly ended: readonly string[]; readonly added: readonly string[] }>('roles').notNull(),
    byId: text('by_id')
      .notNull()
      .references(() => staff.id, { onDelete: 'restrict' }),
    at: instant('at').notNull(),
    takenBackAt: instant('taken_back_at'),
    takenBackById: text('taken_back_by_id').references(() => staff.id, { onDelete: 'restrict' }),
    takenBackWhy: text('taken_back_why'),
  },
  (t) => [
    index('site_transfers_by_site').on(t.siteId),
    isDay('site_transfers_changed', t.changedOn),
    isJson('site_transfers_roles', t.roles),
    rule(
      'site_transfers_taken_back',
      sql`(${t.takenBackAt} IS NULL) = (${t.takenBackById} IS NULL) AND (${t.takenBackAt} IS NULL) = (${t.takenBackWhy} IS NULL)`,
    ),
  ],
);

/** Dated: who is what, for a site or one appliance. */
export const partyRoles = sqliteTable(
  'party_roles',
  {
    id: primaryId(),
    partyId: text('party_id')
      .notNull()
      .references(() => parties.id, { onDelete: 'restrict' }),
    role: text('role').notNull(),
    siteId: text('site_id').references(() => sites.id, { onDelete: 'restrict' }),
    applianceId: text('appliance_id').references(() => appliances.id, { onDelete: 'restrict' }),
    fromOn: day('from_on'),
    toOn: day('to_on'),
    note: text('note'),
  },
  (t) => [
    index('party_roles_by_site').on(t.siteId),
    index('party_roles_by_appliance').on(t.applianceId),
    index('party_roles_by_party').on(t.partyId),
    oneOf('party_roles_role', t.role, PARTY_ROLES),
    rule('party_roles_where', sql`(${t.siteId} IS NULL) <> (${t.applianceId} IS NULL)`),
    isDay('party_roles_from', t.fromOn),
    isDay('party_roles_to', t.toOn),
  ],
);

export const appliances = sqliteTable(
  'appliances',
  {
    id: primaryId(),
    serial: text('serial').notNull(),
    /** Serial with look-alike characters folded, to find it however it is typed. */
    serialKey: text('serial_key').notNull(),
    maker: text('maker').notNull(),
    model: text('model').notNull(),
    sheetId: text('sheet_id'),
    plateFuel: text('plate_fuel'),
    tagFuel: text('tag_fuel'),
    ratedInputKw: real('rated_input_kw'),
    ratedInputBasis: text('rated_input_basis').notNull(),
    ventKind: text('vent_kind'),
    ventLengthM: real('vent_length_m'),
    ventElbows: integer('vent_elbows'),
    isVentConcealed: flag('is_vent_concealed'),
    supersedesId: text('supersedes_id'),
    note: text('note'),
  },
  (t) => [
    index('appliances_by_serial_key').on(t.serialKey),
    index('appliances_by_serial').on(t.serial, t.id),
    uniqueIndex('appliances_maker_serial').on(t.maker, t.serial),
    oneOf('appliances_basis', t.ratedInputBasis, ['gross', 'net']),
    rule(
      'appliances_plate_fuel',
      sql`${t.plateFuel} IS NULL OR ${t.plateFuel} IN ('natural-gas', 'propane', 'butane', 'heating-oil')`,
    ),
    rule(
      'appliances_tag_fuel',
      sql`${t.tagFuel} IS NULL OR ${t.tagFuel} IN ('natural-gas', 'propane', 'butane', 'heating-oil')`,
    ),
    rule('appliances_rating', sql`${t.ratedInputKw} IS NULL OR ${t.ratedInputKw} > 0`),
  ],
);

/** Kept apart, each with where it comes from and how exact it is. */
export const applianceDates = sqliteTable(
  'appliance_dates',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    kind: text('kind').notNull(),
    on: day('happened_on').notNull(),
    precision: text('precision').notNull(),
    source: text('source').notNull(),
  },
  (t) => [
    uniqueIndex('appliance_dates_once').on(t.applianceId, t.kind),
    oneOf('appliance_dates_kind', t.kind, COVER_DATES),
    oneOf('appliance_dates_precision', t.precision, DATE_PRECISIONS),
    isDay('appliance_dates_on', t.on),
  ],
);

export const placements = sqliteTable(
  'placements',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    siteId: text('site_id')
      .notNull()
      .references(() => sites.id, { onDelete: 'restrict' }),
    unit: text('unit'),
    plantGroup: text('plant_group'),
    position: text('position'),
    fromOn: day('from_on'),
    toOn: day('to_on'),
    /** Why it was taken out or moved. */
    endReason: text('end_reason'),
  },
  (t) => [
    index('placements_by_site').on(t.siteId),
    index('placements_by_appliance').on(t.applianceId),
    isDay('placements_from', t.fromOn),
    isDay('placements_to', t.toOn),
  ],
);

/** A conversion starts a new baseline: the states follow each other by date. */
export const fuelStates = sqliteTable(
  'fuel_states',
  {
    id: primaryId(),
    applianceId: text('appliance_id')
      .notNull()
      .references(() => appliances.id, { onDelete: 'restrict' }),
    fuel: text('fuel').notNull(),
    fromOn: day('from_on').notNull(),
    conversionKit: text('conversion_kit'),
    orifice: text('orifice'),
    proof: text('proof'),
  },
  (t) => [
    index('fuel_states_by_appliance').on(t.applianceId, t.fromOn),
    oneOf('fuel_states_fuel', t.fuel, FUELS),
    isDay('fuel_states_from', t.fromOn),
  ],
);

export const gasSupplies = sqliteTable(
  'gas_supplies',
  {
    id: primaryId(),
    kind: text('kind').notNull(),
    fuel: text('fuel').notNull(),
    number: text('number'),
    dialM3: real('dial_m3'),
    compensation: text('compensation'),
    capacityM3PerH: real('capacity_m3_per_h'),
    regulator: text('regulator'),
    nominalMbarG: real('nominal_mbar_g'),
    tankVolumeL: real('tank_volume_l'),
    heatingValueMjPerM3: real('heating_value_mj_per_m3'),
    heatingValueTyped: text('heating_value_typed'),
    heatingValueSource: text('heating_value_source'),
    heatingValueOn: day('heating_value_on'),
  },
  (t) => [
    oneOf('gas_supplies_kind', t.kind, ['meter', 'tank']),
    oneOf('gas_supplies_fuel', t.fuel, FUELS),
    rule(
      'gas_supplies_compensation',
      sql`${t.compensation} IS NULL OR ${t.compensation} IN ('none', 'temperature', 'temperature-pressure')`,
    ),
    rule(
      'gas_supplies_heating_value',
      sql`${t.heatingValueMjPerM3} IS NULL OR ${t.heatingValueMjPerM3} BETWEEN 5 AND 160`,
    ),
    isDay('gas_supplies_heating_value_on', t.heatingValueOn),
  ],
);

/** One supply may serve several sites and units. */
export const gasSupplySites = sqliteTable(
  'gas_supply_sites',
  {
    id: primaryId(),
    gasSupplyId: text('gas_supply_id')
      .notNull()
      .references(() => gasSupplies.id, { onDelete: 'restrict' }),
    siteId: text('site_id')
      .notNull()
      .references(() => sites.id, { onDelete: 'restrict' }),
    unit: text('unit'),
  },
  (t) => [index('gas_supply_sites_by_site').on(t.siteId)],
);

export const gasLoads = sqliteTable(
  'gas_loads',
  {
    id: primaryId(),
    gasSupplyId: text('gas_supply_id')
      .notNull()
      .references(() => gasSupplies.id, { onDelete: 'restrict' }),
    name: text('name').notNull(),
    /** null: connected, and nobody knows yet with how much. */
    inputKw: real('input_kw'),
    applianceId: text('appliance_id').references(() => appliances.id, { onDelete: 'restrict' }),
  },
  (t) => [
    index('gas_loads_by_supply').on(t.gasSupplyId),
    rule('gas_loads_input', sql`${t.inputKw} IS NULL OR ${t.inputKw} > 0`),
  ],
);
